/** What we use of jstat, which brings no types. */
declare module "jstat" {
  interface JStat {
    readonly studentt: { inv(p: number, freedom: number): number };
    readonly normal: { inv(p: number, mean: number, sd: number): number };
    readonly noncentralt: { cdf(t: number, freedom: number, shift: number): number };
  }
  const jstat: JStat;
  export default jstat;
}
