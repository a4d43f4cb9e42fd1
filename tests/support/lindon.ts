import sites from "../../data-reference/crop-sites.json" with { type: "json" };
import type { MonthlyNormals } from "../../src/weather/records/record.ts";

const { tMaxF, tMinF, rainIn } = sites.records.find(({ id }) => id === "CL-01")!
  .expected as unknown as Record<string, number[]>;
const toC = (f: number) => (f - 32) / 1.8;

/** Monthly normals of Lindon 5 WNW, Colorado, 1971-2000 (read; crop-sites.json, CL-01). Its wet days are not printed. */
export const lindonNormals: MonthlyNormals = {
  rainMm: rainIn!.map((inches) => inches * 25.4),
  wetDays: null,
  tMaxC: tMaxF!.map(toC),
  tMinC: tMinF!.map(toC),
};
