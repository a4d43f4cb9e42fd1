import { differenceDigits } from "../../../src/report/tables/differenceDigits.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { Strip } from "../../pictures/roots/twoRootsStrip.ts";
import { answer } from "../../worker/client.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { saidMore } from "./guessWords.ts";

/**
 * Says what the soil between both fronts was worth in the season on show, in the digits of the answer; null where there is none.
 *
 * @param isRipe whether the season is over
 */
export function worthSaid(shown: Formatters, isRipe: boolean): ((strip: Strip) => string) | null {
  const comparison = answer.value?.comparison;
  if (comparison === undefined || comparison.differences.length === 0) return null;
  const say = differenceDigits(comparison, differenceShown.value, shown).water;
  return ({ moreWaterMm }) => {
    const said = saidMore(moreWaterMm, say, shown.length);
    const water = said === saidMore(0, say, shown.length) ? "no more water" : `${said} water`;
    return `${water} ${isRipe ? "this season" : "so far"}`;
  };
}
