import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { describe, expect, test } from "vitest";
import errors from "../../data-reference/saxton-rawls-errors.json" with { type: "json" };
import { resolveColumn } from "../../src/soil/column.ts";
import { readAllHorizons, readHorizons } from "../../src/soil/horizons.ts";
import { type Misfit, limitsBias } from "../../src/soil/limitsBias.ts";
import { markOf, recordsOf, sourceOf } from "./records.ts";

const root = resolve(import.meta.dirname, "../..");
const folder = resolve(root, "../shared/data/soil-horizons");
const present = existsSync(folder);
if (!present) console.info("skipped: ../shared/data/soil-horizons is absent");

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
