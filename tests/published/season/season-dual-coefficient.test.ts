/**
 * The named alternative through a whole scenario: FAO-56's bare loam of example 31 dries day by day as printed
 * (data-reference/evaporation-checks.json). Fallow has no crop, so that reference ET is chosen for the example's potential.
 */
import { describe, expect, test } from "vitest";
import checks from "../../../data-reference/evaporation-checks.json" with { type: "json" };
import { bySeason, noSpread } from "../../../truth/seasons.ts";
import { evaporatedMm, potentialPerEt0 } from "../../support/bareColumn.ts";
import { steadyRecord } from "../../support/steadyRecord.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

const bare = recordsOf(checks).take<
  { tewMm: number; rewMm: number; et0MmPerDay: number; kcb: number; kcMax: number },
  { evaporationMm: number[]; endDepletionMm: number[] }
>("fao56-ex31");
const residue = recordsOf(checks).take<
  { tewMm: number; rewMm: number; coverFraction: number[] },
  { tewMm: number[] }
>("fao56-ch11-mulch");

const potentialMm = (bare.inputs.kcMax - bare.inputs.kcb) * bare.inputs.et0MmPerDay;

/** Evaporated until each evening of a fallow without rain, mm; the topsoil of the example, by a rule of the file. */
async function lossMm(days: number, model: object, surface: object = {}): Promise<number[]> {
  const record = steadyRecord(days, potentialMm / potentialPerEt0);
  const [found] = await bySeason(
    {
      site: { latitude: "40 N", elevation: "1000 m" },
      soil: {
        // TEW 20 mm over 100 mm by eq. 73.
        layers: [
          { name: "loam", thickness: "60 in", texture: "loam", fieldCapacity: "25 %", wiltingPoint: "10 %" },
        ],
        startingWater: { share: "100 %" },
      },
      weather: { record: "steady.csv" },
      crop: { name: "proso millet", sowing: record.sowing, clock: "days" },
      fallow: { length: `${days} days` },
      surface: { readilyEvaporable: `${bare.inputs.rewMm} mm`, evaporatingDepth: "100 mm", ...surface },
      model,
      ensemble: { years: 1, seed: 1, ...noSpread },
    },
    { "steady.csv": record.text },
    ({ ledger }) => evaporatedMm(ledger, days),
  );
  return found!;
}

const dual = { evaporation: "dual coefficient" };

describe(`${sourceOf(bare)} (${markOf(bare)}): bare loam, through a scenario that names the dual coefficient`, () => {
  test(`ten days, to ${bare.tolerance}: ${bare.because}`, async () => {
    const loss = await lossMm(10, dual);
    expect(loss.length).toBe(bare.expected.endDepletionMm.length);
    for (const [day, depletionMm] of bare.expected.endDepletionMm.entries()) {
      expect(Math.abs(loss[day]! - depletionMm), `day ${day + 1}`).toBeLessThanOrEqual(bare.tolerance);
      const evaporation = loss[day]! - (loss[day - 1] ?? 0);
      expect(Math.abs(evaporation - bare.expected.evaporationMm[day]!), `day ${day + 1}`).toBeLessThanOrEqual(
        bare.tolerance,
      );
    }
  });

  test("what is left out is the other rule, which slows less", async () => {
    const [twoStage, left] = [await lossMm(10, { evaporation: "two-stage" }), await lossMm(10, {})];
    expect(left).toEqual(twoStage);
    const printed = bare.expected.evaporationMm;
    // By the tenth day the one has all but stopped; the other still gives some tenths of a millimeter.
    expect(twoStage[9]! - twoStage[8]!).toBeGreaterThan(3 * printed[9]!);
  });
});

test(`${sourceOf(residue)} (${markOf(residue)}): residue takes its share of what can evaporate in fallow, by this rule alone`, async () => {
  for (const [i, cover] of residue.inputs.coverFraction.entries()) {
    const surface = { residueCover: `${100 * cover} %` };
    const dried = (await lossMm(60, dual, surface)).at(-1)!;
    expect(dried).toBeCloseTo(residue.expected.tewMm[i]!, 2);
    const other = (await lossMm(60, { evaporation: "two-stage" }, surface)).at(-1)!;
    expect(other).toBeGreaterThan(dried + 1);
  }
});
