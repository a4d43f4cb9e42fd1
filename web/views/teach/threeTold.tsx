import type { Comparison, DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { differenceDigits } from "../../../src/report/tables/differenceDigits.ts";
import { rangeWithUnit } from "../../../src/report/tables/rangeSaid.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { words } from "../../pictures/kit/palette.ts";

interface ThreeToldProps {
  readonly told: DifferenceAnswer;
  readonly comparison: Comparison;
  /** Place among the differences. */
  readonly d: number;
  readonly shown: Formatters;
}

/** The three numbers that are so often taken for one another, kept apart, in words. */
export function ThreeTold({ told, comparison, d, shown }: ThreeToldProps) {
  const say = differenceDigits(comparison, d, shown).water;
  const { ruleOfThumbMm, storedInExtraDepthMm, extraWaterUsedMm, extraDepthMm } = told;
  const { runs } = comparison.method;
  const deeper = `${shown.depth(Math.abs(extraDepthMm))} ${shown.length} ${extraDepthMm < 0 ? "shallower" : "deeper"}`;
  const range =
    runs === 1
      ? "in the one season run"
      : `in a typical year; 8 years of 10: ${rangeWithUnit(extraWaterUsedMm, say, shown.length)}`;
  const all = [
    [words.ruleOfThumb, ruleOfThumbMm, `extra depth (${deeper}) times what the soil there can hold`],
    [words.stored, storedInExtraDepthMm, "what that depth really held when the crop was sown"],
    [words.used, extraWaterUsedMm.p50, `more than the other crop, ${range}`],
  ] as const;
  return (
    <dl class="three-told">
      {all.map(([name, mm, what]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <strong>
              {say(mm)} {shown.length}
            </strong>
            <span>{what}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
