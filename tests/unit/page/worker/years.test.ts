import { expect, test } from "vitest";
import { answerOf } from "../../../../src/answer/chain/answerOf.ts";
import { chainSentences } from "../../../../src/report/sentences/chainText.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { typeset } from "../../../../src/report/tables/typeset.ts";
import type { Json } from "../../../../web/state/json.ts";
import { makeEngine } from "../../../../web/worker/engine.ts";
import { makePause } from "../../../../web/worker/pause.ts";
import type { Answer, FromEngine } from "../../../../web/worker/protocol.ts";
import { demoAsWritten, resolved } from "../../../support/demos.ts";

const written = {
  ...demoAsWritten("sorghum-in-rotation"),
  weather: { pattern: "summer-peak", annualRain: "19 in" },
  ensemble: { years: 14, seed: 3 },
  chain: { warmUp: 2, length: 4 },
} as Json;
const shown = { run: null, totalIndex: null };

test("with a rotation the page's answer is the command line's: seasons by themselves come first, years in a row last", async () => {
  const answers: Answer[] = [];
  const kinds: string[] = [];
  let report: (text: string) => void = () => undefined;
  const reported = new Promise<string>((resolve) => (report = resolve));
  const whole = new Promise<Answer>((resolve) => {
    const engine = makeEngine((message: FromEngine) => {
      kinds.push(message.kind === "progress" ? `progress of ${message.of}` : message.kind);
      if (message.kind === "text") report(message.text.text);
      if (message.kind !== "answer") return;
      answers.push(message.answer);
      if (message.answer.whole) resolve(message.answer);
    }, makePause());
    engine.onMessage({ kind: "compute", id: 1, scenario: written, units: "us", shown });
    // Asked for before it is there: it waits for the years in a row.
    engine.onMessage({ kind: "text", id: 7, what: "report", shown, units: "us" });
  });
  const last = await whole;
  const expected = answerOf(await resolved(written), "us");
  expect(last.comparison).toEqual(expected);
  expect(last.inARow!.sentences).toEqual(chainSentences(expected.chain!, shownIn("us")).map(typeset));
  expect(last.awaitsYears).toBe(false);
  for (const before of answers.slice(0, -1)) {
    expect(before.whole).toBe(false);
    expect(before.awaitsYears).toBe(true);
    expect(before.comparison.chain).toBeUndefined();
  }
  expect(answers.length).toBeGreaterThan(1);
  expect(kinds).toContain("progress of chains");
  const { walked } = last.inARow!;
  expect(walked[0]!.sinceChange).toBe(1);
  expect(new Set(walked.map(({ crop }) => crop))).toEqual(new Set(["winter wheat", "grain sorghum"]));
  const html = await reported;
  expect(html).toContain("First year and year after year");
  expect(html.indexOf("First year and year after year")).toBeLessThan(html.indexOf("The soil"));
  expect(html).not.toContain("Seasons by themselves");
  expect(html).not.toMatch(/NaN|Infinity|undefined/);
}, 60_000);
