import { expect, test } from "vitest";
import { progressOn } from "../../src/cli/progress.ts";

function told(isTerminal: boolean, times: readonly number[]): string {
  let text = "";
  let at = 0;
  const sink = { write: (more: string) => (text += more) };
  const clock = () => times[Math.min(at++, times.length - 1)] ?? 0;
  const progress = progressOn({ stdout: sink, stderr: sink, cwd: "", isTerminal }, "run", clock);
  for (let done = 1; done < times.length; done++) progress.report(done, 9);
  progress.end();
  return text;
}

test("silent in the first second", () => expect(told(true, [0, 300, 999])).toBe(""));
test("silent where nobody watches", () => expect(told(false, [0, 300, 5000, 9000])).toBe(""));
test("then one line, not too often, that goes away", () => {
  expect(told(true, [0, 500, 1000, 1100, 1300])).toBe("\rrun 2 of 9\rrun 4 of 9\r          \r");
});
