import { expect, test } from "vitest";
import type { DigAnswer, FittedCase } from "../../../src/answer/dig/digAnswer.ts";
import { digSentences, fitWeatherSaid } from "../../../src/report/sentences/field/digText.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";

const tooDeep: FittedCase = {
  case: "pan",
  value: 1,
  low: 1,
  high: 1,
  otherwise: 0.4,
  tried: 16,
  tooDeepShare: 1,
  tooShallowShare: 0,
  shutMm: 254,
  openMm: 762,
  observedMm: 1829,
  simulatedMm: 762,
  verdict: "no passage is open enough",
  told: { reading: "slowed", by: "their depth", stoppedShare: null },
  stop: { depthMm: 500, low: 450, high: 550 },
};

function said(one: FittedCase, ownYear = false): string {
  const fit = {
    what: "passage" as const,
    layer: "pan",
    ownYear,
    decides: true,
    cases: [one],
    pairs: [],
    undug: [],
  };
  const dig: DigAnswer = { confidence: 0.95, paired: false, groups: [], differences: [], fit };
  return digSentences(dig, shownIn("us"), "short").join(" ");
}

test("roots that no passage explains are told by the years that were tried", () => {
  expect(said(tooDeep)).toContain(
    '"pan": in none of the 16 years tried does any passage explain roots at 72.0 in: through an open layer the front would be at 30.0 in that day, in the middle of them.',
  );
  expect(said({ ...tooDeep, tooDeepShare: 13 / 16 })).toContain(
    "in only 3 of the 16 years tried does a passage explain roots at",
  );
  expect(said(tooDeep, true)).toContain("in none of the 16 soils drawn does any passage explain");
  expect(
    said({ ...tooDeep, tooDeepShare: 0, tooShallowShare: 1, verdict: "no passage is shut enough" }),
  ).toContain("in none of the 16 years tried does any passage explain roots at only");
});

test("a fitted front says which weather it is of", () => {
  expect(fitWeatherSaid({ ownYear: true })).toBe("in the weather of the dig's own year");
  expect(said(tooDeep)).toContain("meets the depths dug, in other years' weather, as that of");
});
