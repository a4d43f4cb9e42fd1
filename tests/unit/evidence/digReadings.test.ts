import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import type { Comparison } from "../../../src/answer/comparison/comparison.ts";
import { runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import { readJson } from "../../../src/scenario/index.ts";
import { fieldSentences } from "../../../src/report/sentences/field/fieldSentences.ts";
import { firstLines } from "../../../src/report/sentences/firstLine.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { resolved } from "../../support/demos.ts";

/** An invented field: plants of two rows, dug on 12 July; roots turned sideways at 7 in in one, went straight to 31 in in the other. */
interface Written {
  readonly evidence: { readonly rootDepths: readonly Record<string, unknown>[] };
  readonly cases: readonly Record<string, unknown>[];
}
const fixture = new URL("../../fixtures/dig/two-rows-dug.json", import.meta.url);
const field = readJson(readFileSync(fixture, "utf8"), "two-rows-dug.json") as unknown as Written;
const [turned, straight] = field.evidence.rootDepths;

const around = (middle: number) => [-2, -1, 0, 1, 2].map((off) => `${middle + off} in`);

async function answerOf(
  rootDepths: readonly unknown[],
  more: Record<string, unknown> = {},
  evidence: Record<string, unknown> = {},
): Promise<{ answer: Comparison; said: string; money: string }> {
  const scenario = await resolved({
    ...field,
    ensemble: { years: 40, seed: 1 },
    ...more,
    evidence: { rootDepths, ...evidence },
  });
  const answer = comparisonOf(runEnsemble(scenario), "us");
  const said = firstLines(answer, shownIn("us")).join(" ");
  return { answer, said, money: fieldSentences(answer, scenario, "us").money.flat().join(" ") };
}

const extraOf = ({ answer }: { readonly answer: Comparison }) => answer.differences[0]!.extraYield.p50;

describe("roots turned sideways at 7 in in one row, straight to 31 in in the other, dug on one day in July", async () => {
  const july = await answerOf([turned, straight]);
  const { digReadings } = july.answer;

  test("are told as a range, first of all: lower if they go on slowly, higher if they stopped there", () => {
    const [goingOn, stopped] = digReadings!.answers.map(({ differences }) => differences[0]!.extraYield.p50);
    expect(goingOn).toBe(extraOf(july));
    expect(stopped!).toBeGreaterThan(goingOn! + 5);
    expect(july.said).toMatch(
      new RegExp(
        `^"straight" against "turned": ${goingOn!.toFixed(0)} to ${stopped!.toFixed(0)} bu/ac more, the lower if the roots of "turned" go on slowly \\(to [\\d.]+ in when ripe\\), the higher if they stopped where they were dug \\(7\\.0 in, 2024-07-12\\): one day's dig cannot tell`,
      ),
    );
  });

  test("stopped roots stay at the depth dug, those that go on do not", () => {
    const [goingOn, stopped] = digReadings!.answers.map(({ cases }) => cases[0]!.finalRootDepthMm);
    expect(stopped!).toBeGreaterThan(150);
    expect(stopped!).toBeLessThan(205);
    expect(goingOn!).toBeGreaterThan(2 * stopped!);
    expect(digReadings!.undecided).toMatchObject([
      { case: "turned", dugMm: expect.closeTo(7 * 25.4, 6), goingOnMm: goingOn },
    ]);
  });

  test("density, which lets more through than the roots say, stands beside the dig, with a way to choose", async () => {
    expect(digReadings!.doubts).toMatchObject([{ kind: "density outside the dig", case: "turned" }]);
    expect(july.said).toMatch(/Dig and model do not agree: density or reading lets 35 % through "pan"/);
    expect(july.said).toContain("by density or penetrometer 0.0 in of water and 0 bu/ac.");
    expect(july.said).toContain("(evidence.digDecides) to no.");
    // The very figures of the answer that would be chosen.
    const byDensity = await answerOf([turned, straight], {}, { digDecides: false });
    const { use, differences } = digReadings!.answers.at(-1)!;
    expect(use).toBe("not");
    expect(differences[0]!.extraWaterUsedMm).toEqual(byDensity.answer.differences[0]!.extraWaterUsedMm);
    expect(byDensity.said).toContain("(evidence.digDecides) to yes.");
    const fitted = byDensity.answer.digReadings!.answers.at(-1)!;
    expect(fitted.use).toBe("fitted");
    expect(fitted.differences[0]!.extraYield.p50).toBe(extraOf(july));
  });

  test("money is told each way to read the dig", () => {
    expect(july.money).toMatch(
      /each way to read the dig: \d+ if the roots go on slowly; \d+ if the roots stopped where they were dug; 0 by density/,
    );
  });

  test("money each way to read the dig is that of the rows that change, as in the budget: 2 of 8 rows, a quarter", async () => {
    const rowPositions = { rows: 8, rowsInTrack: 2, inTrack: "turned", other: "straight" };
    const { answer } = await answerOf([turned, straight], { rowPositions });
    const nets = (of: Comparison) => of.digReadings!.answers.map((one) => one.differences[0]!.netPerHa!.p50);
    expect(nets(answer)[0]).toBe(answer.money!.pairs[0]!.netPerHa.p50);
    nets(answer).forEach((net, i) => expect(net).toBeCloseTo(nets(july.answer)[i]! / 4, 6));
    expect(nets(answer)[1]).toBeGreaterThan(10);
  });

  test("seen to stop, or dug again as deep in late August, they stopped; dug deeper then, they went on", async () => {
    const seen = await answerOf([{ ...turned, roots: ["stopped"] }, straight]);
    const later = (depths: readonly string[]) => ({ ...turned, date: "2024-08-25", depths });
    const asDeep = await answerOf([turned, later(turned!["depths"] as string[]), straight]);
    const deeper = await answerOf([turned, later(around(20)), straight]);
    for (const { answer } of [seen, asDeep]) {
      expect(answer.cases[0]!.finalRootDepthMm).toBeLessThan(205);
      expect(answer.digReadings!.undecided).toEqual([]);
    }
    expect(deeper.answer.digReadings?.undecided ?? []).toEqual([]);
    expect(deeper.answer.cases[0]!.finalRootDepthMm).toBeGreaterThan(400);
    expect(asDeep.answer.evidence!.dig!.fit!.cases[0]!.told).toMatchObject({
      reading: "stopped",
      by: "two dates",
    });
    expect(extraOf(seen)).toBe(digReadings!.answers[1]!.differences[0]!.extraYield.p50);
  });

  test("seen to go straight or through a crack, they go on, and no range is told", async () => {
    for (const way of ["straight", "through a crack"]) {
      const { answer } = await answerOf([{ ...turned, roots: [way] }, straight]);
      expect(answer.digReadings!.undecided).toEqual([]);
      expect(answer.differences).toEqual(july.answer.differences);
    }
  });

  test("the deeper the other row was dug, the more it is worth, past what an open layer lets the model's front be", async () => {
    let before = 0;
    for (const depth of [24, 31, 35, 40, 45, 60]) {
      const { answer } = await answerOf([turned, { ...straight, depths: around(depth) }]);
      const extra = answer.differences[0]!.extraWaterUsedMm.p50;
      expect(extra).toBeGreaterThanOrEqual(before);
      before = extra;
    }
  });
});

test("roots dug deeper than the model's when ripe are told at the top, and suspect first the model's own pace", async () => {
  const { answer, said } = await answerOf([turned, { ...straight, depths: around(75) }]);
  expect(answer.digReadings!.doubts).toContainEqual(
    expect.objectContaining({ kind: "deeper than the front when ripe", case: "straight" }),
  );
  expect(said).toMatch(/"straight" was dug to 75\.0 in \(mean\), deeper than the model's roots when ripe/);
  expect(said).toContain("Suspect first the model's own pace for this crop");
});

test("depths of one file that do not go together are told", async () => {
  const notesOf = async (dug: Record<string, unknown>, rootingDepth: string) => {
    const cases = [{ ...field.cases[0], rootingDepth }, field.cases[1]];
    return (await resolved({ ...field, cases, evidence: { rootDepths: [dug, straight] } })).notes.join(" ");
  };
  expect(await notesOf(turned!, "30 in")).toContain('in or above "pan", but its rootingDepth says 30 in');
  expect(await notesOf({ ...turned, roots: ["stopped"] }, "30 in")).toContain(
    "The two contradict each other",
  );
  expect(await notesOf(turned!, "6 in")).toContain("below the 6 in");
  expect(await notesOf(turned!, "7.5 in")).not.toContain("rootingDepth says");
  const turnedLow = { ...turned, depths: ["14 in", "15 in"], turnedAt: ["12 in"] };
  const { notes } = await resolved({ ...field, evidence: { rootDepths: [turnedLow, straight] } });
  expect(notes.join(" ")).toContain("name the layer that turned them as evidence.denseLayer");
});

test("a dig that agrees with density and leaves nothing open tells no more", async () => {
  const [dug] = [{ ...straight, depths: ["20 in", "33 in", "45 in", "26 in", "38 in"] }];
  const { answer } = await answerOf([dug]);
  expect(answer.digReadings).toBeUndefined();
});
