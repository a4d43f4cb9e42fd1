import { describe, expect, test } from "vitest";
import { cardNames } from "../../../../web/state/view.ts";
import type { Json } from "../../../../web/state/json.ts";
import { cards } from "../../../../web/views/inputs/cardPlan.ts";
import { cardSaid } from "../../../../web/views/inputs/cardSaid.ts";
import { resolvedOf } from "../../../../web/worker/resolved.ts";
import { demoAsWritten, resolved } from "../../../support/demos.ts";

const written = demoAsWritten("sorghum-over-plough-pan") as unknown as Json;
const read = resolvedOf(await resolved(written));

describe("what stands on a card", () => {
  test.each([
    ["scenario", "Grain sorghum over a plough pan, silt loam, invented data, with notes"],
    ["site", "38.5 N, 3400 ft"],
    // A pan lets a fifth of the roots through cracks (data-reference/open-share.json); density leaves the others less than half.
    ["soil", "plough pan 6 to 10 in, 1.62 g/cm³, roots keep 56 % of their pace, 4 layers to 96 in"],
    ["start", "45 % of the available water at every depth"],
    ["weather", "12 to 14 in of rain a year, pattern summer-peak"],
    ["crop", "grain sorghum, sown Jun 1, after 11 months of fallow"],
    ["cases", "“over the pan” against “pan loosened” (plough pan: bulk density 1.36 g/cm³), and 1 more"],
  ] as const)("%s of the demo", (card, said) =>
    expect(cardSaid(card, { written, read, units: "us" })).toBe(said),
  );

  test("follows the units that are chosen, where the engine read it", () =>
    expect(cardSaid("soil", { written, read, units: "metric" })).toMatch(/^plough pan 152 to 254 mm, 1\.62/));

  test("is said of every card, of an empty scenario too, and before anything is read", () => {
    expect(Object.keys(cards)).toEqual(cardNames);
    for (const card of cardNames)
      for (const one of [written, {}]) {
        const said = cardSaid(card, { written: one, read: null, units: "us" });
        expect(said, card).not.toBe("");
        expect(said, card).not.toMatch(/undefined|null|NaN|Infinity|object/);
      }
  });

  test("tells records and totals apart, and water by probe", () => {
    const of = (part: Record<string, Json>, card: "weather" | "start") =>
      cardSaid(card, { written: part, read: null, units: "us" });
    expect(of({ weather: { record: "a.csv" } }, "weather")).toBe("record a.csv, years as they were");
    expect(of({ weather: { record: "a.csv", annualRain: ["12 in", "15 in"] } }, "weather")).toBe(
      "record a.csv, scaled to 12 in, 15 in of rain a year",
    );
    expect(of({ soil: { startingWater: { moistDepth: "30 in", shareBelow: "20 %" } } }, "start")).toBe(
      "moist down to 30 in, 20 % of the available water below",
    );
  });
});
