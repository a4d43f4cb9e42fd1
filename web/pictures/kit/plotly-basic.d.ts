/** The part of the library that draws scatter and bar charts; its types come with the whole of it. */
declare module "plotly.js-basic-dist-min" {
  export * from "plotly.js-dist-min";
}
