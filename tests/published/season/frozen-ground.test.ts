/** Frozen ground and the melt it lets in. Rows, sources and tolerances: data-reference/frozen-ground-checks.json. */
import { describe, expect, test } from "vitest";
import checks from "../../../data-reference/frozen-ground-checks.json" with { type: "json" };
import {
  frozenGroundIndex,
  frozenIntakeMm,
  frozenTopsoilMm,
  isFrozenAt,
} from "../../../src/season/frozenGround.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "../../../truth/places.ts";
import { bySeason, noSpread } from "../../../truth/seasons.ts";
import { frozenByDay } from "../../support/frozenByDay.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "../weather/records.ts";

const { take, noneLeft } = recordsOf(checks);

const index = take<{ rows: number[][] }, { cDays: number[] }>("molnau1983-index");
published(
  `${sourceOf(index)}: ${index.what}`,
  closenessOf(index),
  index.inputs.rows.map((row, i) => [...row, index.expected.cDays[i]!]),
  frozenGroundIndex,
);

const bounds = take<{ rows: [number, string][] }, { frozen: number[] }>("molnau1983-bounds");
published(
  `${sourceOf(bounds)}: ${bounds.what}`,
  closenessOf(bounds),
  bounds.inputs.rows.map((row, i) => [...row, bounds.expected.frozen[i]!]),
  (cDays: number, was: string) => Number(isFrozenAt(cDays, was === "frozen")),
);

const intake = take<{ rows: number[][] }, { mm: number[] }>("gray1985-intake");
published(
  `${sourceOf(intake)}: ${intake.what}`,
  closenessOf(intake),
  intake.inputs.rows.map((row, i) => [...row, intake.expected.mm[i]!]),
  frozenIntakeMm,
);

const share = take<
  { snowMm: number; texture: string; availablePercent: number[] },
  { share: [number, number] }
>("willis-haas-share");
describe(`${sourceOf(share)} (${markOf(share)}): ${share.what}; ${share.because}`, () => {
  const { snowMm, texture, availablePercent } = share.inputs;
  const [low, high] = share.expected.share;
  test.each(availablePercent)(`${texture}, percent of its available water: %d`, async (percent) => {
    const place = { ...placeNamed("mandan"), texture };
    const [poresFilled] = await bySeason(
      {
        site: siteOf(place),
        soil: { layers: layersOf(place), startingWater: { share: `${percent} %` } },
        weather: normalsOf(place),
        crop: { name: "spring wheat", sowing: "May 1" },
        ensemble: { years: 1, seed: 1, ...noSpread },
      },
      {},
      ({ slices, startWaterMm }) => {
        const within = startWaterMm.filter((_, j) => slices.topMm[j]! < frozenTopsoilMm);
        const sum = (values: Float64Array) => values.reduce((total, mm) => total + mm, 0);
        return sum(within) / sum(slices.saturationMm.slice(0, within.length));
      },
    );
    const taken = frozenIntakeMm(snowMm, poresFilled!) / snowMm;
    expect(taken).toBeGreaterThanOrEqual(low);
    expect(taken, `${poresFilled} of the pores`).toBeLessThanOrEqual(high);
  });
});

const days = take<{ places: string[] }, { days: [number, number][] }>("frozen-days");
describe(`${days.what} (${markOf(days)}; ${days.because})`, () => {
  test.each(days.inputs.places.map((id, i) => [id, ...days.expected.days[i]!] as const))(
    "%s: %d to %d",
    async (id, low, high) => {
      const place = placeNamed(id);
      const counted = await bySeason(
        {
          site: siteOf(place),
          soil: { layers: layersOf(place), startingWater: { share: "10 %" } },
          weather: normalsOf(place),
          crop: { name: "grain sorghum", sowing: "Jul 1" },
          fallow: { length: "365 days" },
          ensemble: { years: 20, seed: 1 },
        },
        {},
        ({ ledger, firstIndex }, { weather }) =>
          frozenByDay(ledger, weather, firstIndex, 365).filter(Boolean).length,
      );
      const mean = counted.reduce((sum, one) => sum + one, 0) / counted.length;
      expect(mean).toBeGreaterThanOrEqual(low);
      expect(mean).toBeLessThanOrEqual(high);
    },
  );
});

noneLeft();
