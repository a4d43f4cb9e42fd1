/** `npm run laws` tries every law with all its cases; all other runs try the slowest with fewer. */
export const wholeLaws = process.env["ROOTFRONT_LAWS"] === "whole";

/** How many random cases a slow law is tried with: the first of the same ones, where its seed is fixed. */
export function casesOf({ whole, usually }: { readonly whole: number; readonly usually: number }): number {
  return wholeLaws ? whole : usually;
}
