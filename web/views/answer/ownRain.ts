import { overRain, type OverRain } from "../../../src/answer/runs/overRain.ts";
import type { Answer } from "../../worker/protocol.ts";
import { middleRuns } from "./runs.ts";

/** Years at their own rain, of one difference. */
export interface OwnRain {
  /** With a rotation the first year and those after it; else seasons by themselves. */
  readonly parts: readonly { readonly said: string; readonly over: OverRain }[];
  /** Every year of the answer has its own rain, whether it is a record's or varies about a mean: no total to look at other ones beside. */
  readonly tellsAll: boolean;
}

/** Rain that differs by less is one total, mm. */
const oneTotalMm = 1;

/** Null where years were scaled to one total, or are not whole in the weather. */
export function ownRainOf(now: Pick<Answer, "comparison" | "byRun">, d: number): OwnRain | null {
  const { chain, overRain: varying, rainTotalMm } = now.comparison;
  if (chain !== undefined) {
    const found = chain.overRain?.find((at) => at.rainTotalMm === chain.rainTotalMm)?.differences[d];
    const parts =
      found === undefined
        ? []
        : [
            { said: "Year after year", over: found.yearAfterYear },
            { said: "First year", over: found.firstYear },
          ];
    return parts.length > 0 && parts.every(({ over }) => varies(over)) ? { parts, tellsAll: true } : null;
  }
  if (varying?.[d] !== undefined) return { parts: [{ said: "", over: varying[d] }], tellsAll: true };
  const asItCame = rainTotalMm === null ? seasonsOverRain(now, d) : null;
  return asItCame === null || !varies(asItCame)
    ? null
    : { parts: [{ said: "", over: asItCame }], tellsAll: false };
}

/** Of a record as it came: the answer has no list of it, its runs do. */
function seasonsOverRain(now: Pick<Answer, "comparison" | "byRun">, d: number): OverRain | null {
  const { annualRainMm, cases } = middleRuns(now);
  const [from, to] = [cases[0], cases[d + 1]];
  if (annualRainMm === null || from === undefined || to === undefined) return null;
  const { kgPerHaPerUnit } = now.comparison.method.yieldLine;
  return overRain(
    Array.from(annualRainMm, (rainMm, run) => ({
      rainMm,
      extraWaterUsedMm: to.transpirationMm[run]! - from.transpirationMm[run]!,
      extraYieldKgPerHa: (to.yield[run]! - from.yield[run]!) * kgPerHaPerUnit,
    })),
  );
}

function varies({ years }: OverRain): boolean {
  return years.length > 1 && years.at(-1)!.rainMm - years[0]!.rainMm > oneTotalMm;
}
