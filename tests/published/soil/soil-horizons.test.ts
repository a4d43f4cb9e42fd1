import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import errors from "../../../data-reference/saxton-rawls-errors.json" with { type: "json" };
import spreads from "../../../data-reference/available-water-spread.json" with { type: "json" };
import usual from "../../../data-reference/bulk-density-usual.json" with { type: "json" };
import { resolveColumn } from "../../../src/soil/layers/column.ts";
import { readAllHorizons, readHorizons } from "../../../src/soil/horizons/horizons.ts";
import { type Misfit, limitsBias } from "../../support/limitsBias.ts";
import { textureClass } from "../../../src/soil/equations/texture.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

const root = resolve(import.meta.dirname, "../../..");
const folder = resolve(root, "../shared/data/soil-horizons");
const present = existsSync(folder);
if (!present) console.info("skipped: ../shared/data/soil-horizons is absent");

const spreadRows = recordsOf(spreads);
const usualRows = recordsOf(usual);
const { take, noneLeft } = recordsOf(errors);
const stated = take<null, { wiltingPoint: number; fieldCapacity: number }>("saxton-rawls-standard-errors");
const standardError = stated.expected;
const availableError = Math.hypot(standardError.wiltingPoint, standardError.fieldCapacity);

const say = (what: string, misfit: Misfit | null): string =>
  misfit === null
    ? `${what}: none`
    : `${what}: bias ${misfit.bias.toFixed(3)}, RMSE ${misfit.rmse.toFixed(3)} (${misfit.count} horizons)`;

/** Twice the paper's standard error: other soils than it was fitted to, and organic matter often unknown. */
function withinTwice(misfit: Misfit | null, error: number): void {
  expect(misfit?.count).toBeGreaterThan(10);
  expect(misfit?.rmse).toBeLessThan(2 * error);
  expect(Math.abs(misfit?.bias ?? Number.NaN)).toBeLessThan(error);
}

/** Numbers of some columns, of the rows that have all of them. */
function cellsOf(csv: string, columns: readonly string[]): number[][] {
  const { data } = Papa.parse<Record<string, string>>(csv, { header: true });
  return data
    .map((row) => columns.map((column) => (row[column] ? Number(row[column]) : Number.NaN)))
    .filter((cells) => cells.every(Number.isFinite));
}

const coresFile = resolve(root, "../shared/data/soil-cores/pullman_wa_cores_by_foot_1999-2006.csv");
if (!existsSync(coresFile)) console.info("skipped: ../shared/data/soil-cores is absent");
test.skipIf(!existsSync(coresFile))(
  "densities taken as usual in silt loam hold nine tenths of the open cores, and no tenth more",
  () => {
    const { expected } = usualRows.rows(({ id }) => id === "usual-silty")[0]!;
    const cores = cellsOf(readFileSync(coresFile, "utf8"), ["BulkDensity"]).map(([density]) => density!);
    expect(cores.length).toBeGreaterThan(5000);
    const share = (low: number, high: number) =>
      cores.filter((density) => density >= low && density <= high).length / cores.length;
    expect(share(expected.lowGPerCm3, expected.highGPerCm3)).toBeGreaterThan(0.9);
    expect(share(expected.lowGPerCm3 + 0.1, expected.highGPerCm3 - 0.1)).toBeLessThan(0.9);
  },
);

describe.skipIf(!present)(
  `estimated limits on the open horizons of ../shared/data, against the errors of ${sourceOf(stated)} (${markOf(stated)})`,
  () => {
    const survey = present ? readFileSync(resolve(folder, "ssurgo_chorizon_amarillo_TX-NM.csv"), "utf8") : "";
    const laboratory = present ? readFileSync(resolve(folder, "ncss_lab_amarillo_2-pedons.csv"), "utf8") : "";

    test("soil survey: available water within twice the paper's error", () => {
      const { availableWater } = limitsBias(readAllHorizons(survey, "survey.csv"));
      console.info(`survey horizons, ${say("available water", availableWater)}`);
      withinTwice(availableWater, availableError);
    });

    test("laboratory pedons: field capacity and wilting point within twice the paper's error", () => {
      const bias = limitsBias(readAllHorizons(laboratory, "laboratory.csv"));
      console.info(
        `laboratory horizons, ${say("field capacity", bias.fieldCapacity)}; ` +
          `${say("wilting point", bias.wiltingPoint)}; ${say("available water", bias.availableWater)}`,
      );
      withinTwice(bias.fieldCapacity, standardError.fieldCapacity);
      withinTwice(bias.wiltingPoint, standardError.wiltingPoint);
      withinTwice(bias.availableWater, availableError);
    });

    test("our spread of an estimate lies between these misfits and the paper's errors taken together, within its tolerance", () => {
      const { expected, tolerance } = spreadRows.take<unknown, { sd: number }>("spread-estimated");
      for (const horizons of [
        readAllHorizons(survey, "survey.csv"),
        readAllHorizons(laboratory, "laboratory.csv"),
      ]) {
        const rmse = limitsBias(horizons).availableWater?.rmse ?? Number.NaN;
        expect(Math.abs(rmse - expected.sd)).toBeLessThanOrEqual(tolerance);
      }
      expect(Math.abs(availableError - expected.sd)).toBeLessThanOrEqual(tolerance);
    });

    test("our spread of a measured available water is half of what lies between the survey's low and high", () => {
      const { expected, tolerance } = spreadRows.take<unknown, { sd: number }>("spread-measured");
      const halves = cellsOf(survey, ["awc_l", "awc_h"]).map(([low, high]) => (high! - low!) / 2);
      expect(halves.length).toBeGreaterThan(300);
      const mean = halves.reduce((sum, half) => sum + half, 0) / halves.length;
      console.info(`survey horizons, half of low to high available water: mean ${mean.toFixed(4)}`);
      expect(Math.abs(mean - expected.sd)).toBeLessThanOrEqual(tolerance);
    });

    test("densities taken as usual are those of the survey, texture by texture", () => {
      for (const row of usualRows.rows(({ id }) => id !== "usual-silty")) {
        const listed = cellsOf(survey, ["sandtotal_r", "claytotal_r", "dbthirdbar_l", "dbthirdbar_h"]).filter(
          ([sand, clay]) => row.inputs.textures.includes(textureClass(sand! / 100, clay! / 100)),
        );
        expect(listed.length).toBeGreaterThan(30);
        expect(Math.min(...listed.map(([, , low]) => low!))).toBe(row.expected.lowGPerCm3);
        expect(Math.max(...listed.map(([, , , high]) => high!))).toBe(row.expected.highGPerCm3);
      }
    });

    test("every component of the survey file becomes a column", () => {
      const components = new Set(
        survey.split("\n").flatMap((line) => /,Amarillo,\d+,(\d+),/.exec(line)?.[1] ?? []),
      );
      expect(components.size).toBe(99);
      for (const component of components) {
        const { layers } = readHorizons(survey, "survey.csv", { component });
        const column = resolveColumn(layers, "soil.layers");
        expect(column.layers[0]?.topMm).toBe(0);
        for (const { wiltingPoint, fieldCapacity, saturation } of column.layers) {
          expect(wiltingPoint).toBeLessThan(fieldCapacity);
          expect(fieldCapacity).toBeLessThan(saturation);
        }
      }
    });

    test("a component in several map units is read once and says so", () => {
      const reading = readHorizons(survey, "survey.csv", { component: "amarillo tx079 paabu" });
      expect(reading.layers.map(({ name }) => name)).toEqual(["Ap", "Bt", "Btkk", "Btk"]);
      expect(reading.notes.join("\n")).toContain("12 rows repeat a horizon");
    });

    test("both laboratory pedons become columns, and what is missing is said", () => {
      for (const pedon of ["80TX303003", "91nm037001"]) {
        const reading = readHorizons(laboratory, "laboratory.csv", { pedon });
        expect(resolveColumn(reading.layers, "soil.layers").layers.length).toBe(reading.layers.length);
        expect(reading.notes.join("\n")).toContain("no organic matter in the file for any horizon");
        expect(reading.notes.join("\n")).toContain("no bulk density, so its water by weight cannot be used");
      }
    });
  },
);

noneLeft();

// Without data of their own; tests/unit/soil/resolveLayer.test.ts shows how they are used.
for (const id of ["spread-wilting-point-measured", "spread-field-capacity-measured", "spread-at-most"])
  spreadRows.take(id);
if (present) {
  spreadRows.noneLeft();
  if (existsSync(coresFile)) usualRows.noneLeft();
}
