import { tryQuantity } from "../../quantity/index.ts";
import { nearestName } from "../../nearestName.ts";
import { wetnessLimits, wetnessWords } from "../../evidence/samples/penetrometer.ts";
import { resistanceWithin } from "./facts/limits.ts";
import { group, list, loose, quantity } from "./fields.ts";

/** Penetrometer readings in a scenario file: how wet the soil was, and a log of one place. */

const words = Object.keys(wetnessWords) as (keyof typeof wetnessWords)[];
const percent = (share: number) => `${Math.round(share * 100)} %`;

/** How wet the soil was when it was pushed, as a share of the available water, 0 to 1. */
export function wetness() {
  const expected =
    'how wet the soil was: "dry", "moist" or "wet", or a share of the available water such as "60 %"';
  return loose((found) => {
    const word = words.find((one) => one === String(found).trim().toLowerCase());
    if (word !== undefined) return { value: wetnessWords[word] as number };
    const share = tryQuantity(found, "share");
    if (typeof share === "number" && share >= 0 && share <= 1) return { value: share };
    const near = typeof found === "string" && typeof share !== "number" ? nearestName(found, words) : null;
    const mend = typeof share === "number" ? "0 is wilting point, 100 % field capacity" : "use one of these";
    return { fault: { expected, mend: near === null ? mend : `did you mean "${near}"?` } };
  }).describe(
    `How wet the soil was when it was pushed: dry, moist or wet, or a share of the available water. Below ${percent(wetnessLimits.unusableBelow)} (dry) the reading tells of dryness and is not used for roots; below ${percent(wetnessLimits.sureFrom)} (moist) it is used with a warning. Left out: near field capacity.`,
  );
}

const readingFields = group(
  {
    depth: quantity("depth", {
      means: "Depth of the cone",
      within: { from: 0, to: 2006.6, says: "0 to 79 in (2000 mm)" },
    }),
    resistance: quantity("resistance", {
      means: "What the dial shows there",
      within: resistanceWithin,
    }),
  },
  "One reading",
);

export const penetrometerFields = group(
  {
    readings: list(readingFields, "Depth by depth; several pushes may be put together", { atMost: 1000 }),
    wetness: wetness().optional(),
  },
  "A penetrometer log: each layer that types no reading of its own gets the mean of the readings in it",
);
