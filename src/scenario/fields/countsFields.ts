import type * as z from "zod";
import { grainStages } from "../../evidence/counts/counts.ts";
import { centres, seedSizes } from "../../evidence/counts/countsSunflower.ts";
import { cornSeasons } from "../../evidence/counts/countsWeight.ts";
import { choice, group, list, number, quantity, text, wholeNumber, yesOrNo } from "./fields.ts";
import { countedArea, grainPerHead, kernelsIn, kernelWeight } from "./grainFields.ts";
import { length } from "./lengthField.ts";
import { harvestYears } from "./facts/limits.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Counts of ears, heads and kernels in a scenario file. */

const rowLength = { from: 150, to: 305_000, says: "6 in to 1000 ft (0.15 to 305 m)" };
const rowWidth = { from: 75, to: 3100, says: "3 in to 10 ft (75 to 3100 mm)" };
const someShare = { from: 0, to: 1, says: "0 to 100 %" };
const moisture = { from: 0.01, to: 0.6, says: "1 to 60 %" };
const headDiameter = { from: 25, to: 508, says: "1 to 20 in (25 to 500 mm)" };

/** Where the counting was done; of a spot, or of all spots of the group. */
export const groundShape = {
  rowLength: length(
    "Length of row counted. Left out: what makes a thousandth of an acre",
    "17 ft 5 in",
    rowLength,
  ).optional(),
  rows: withDefault(wholeNumber("Rows counted side by side", 1, 100), 1),
  area: countedArea("Ground counted over, in place of length and width of rows").optional(),
};

/** Sunflower heads; of a spot, or of all spots of the group. */
export const headShape = {
  filled: quantity("share", { means: "Sunflower seeds that are filled", within: someShare }).optional(),
  centre: withDefault(choice(centres, "Middle of the sunflower head"), "filled"),
};

const perEar = (means: string, to: number, from = 0) =>
  list(wholeNumber(means, from, to), "One number an ear or head", { atMost: 200 }).optional();

const spotFields = group(
  {
    ears: wholeNumber("Ears counted, without second ears", 0, 100_000).optional(),
    heads: wholeNumber("Heads counted", 0, 100_000).optional(),
    ...groundShape,
    kernelRows: perEar("Kernel rows around one ear", 30, 1),
    kernelsPerRow: perEar("Kernels along one row of an ear", 120),
    kernelsPerHead: perEar("Kernels or seeds of one ear or head", 20_000),
    spikeletsPerHead: perEar("Spikelets of one head", 60),
    kernelsPerSpikelet: number("Kernels of one spikelet", {
      from: 0,
      to: 10,
      says: "0 to 10",
    }).optional(),
    secondEars: wholeNumber("Second ears counted", 0, 100_000).optional(),
    secondEarKernels: perEar("Kernels of one second ear", 2000),
    secondEarShare: quantity("share", {
      means: "Kernels of a second ear, share of a first ear's",
      within: someShare,
    }).optional(),
    headDiameters: list(
      quantity("depth", { means: "Across one sunflower head", within: headDiameter }),
      "One diameter a head",
    ).optional(),
    ...headShape,
  },
  "One spot counted",
);

const countsFields = group(
  {
    case: text("The case counted"),
    crop: text("The crop counted. Left out: the scenario's", 60).optional(),
    rowPosition: text('Where the row is, such as "wheel track"', 60).optional(),
    rowWidth: length("From row to row", "30 in", rowWidth).optional(),
    ...groundShape,
    kernelWeight: kernelWeight("Weight of a thousand kernels").optional(),
    kernelsPerBushel: kernelsIn("bushel", 10_000, 5_000_000).optional(),
    kernelsPerPound: kernelsIn("pound", 500, 300_000).optional(),
    grainPerHead: grainPerHead("Grain of one head, where kernels are not counted").optional(),
    season: choice(cornSeasons, "What filled the kernels of corn, where they are not weighed").optional(),
    seedSize: choice(seedSizes, "Size of sunflower seed").optional(),
    ...headShape,
    moisture: quantity("share", {
      means: "Moisture of the kernels when weighed",
      otherwise: "the trade's",
      within: moisture,
    }).optional(),
    tradeMoisture: quantity("share", {
      means: "Moisture that yield is counted at",
      otherwise: "the crop's",
      within: moisture,
    }).optional(),
    stage: choice(grainStages, "How far the grain was when counted").optional(),
    spots: list(spotFields, "Spots counted, each on its own", { atMost: 200 }),
  },
  "Counts in one case",
);

/** The keys of `evidence` that tell of counts. */
export const countsShape = {
  counts: list(countsFields, "Counts, case by case", { atMost: 100 }).optional(),
  countsYear: wholeNumber(
    "Calendar year of harvest of the crop counted; with a station record that holds it, that season stands beside the counts. Left out: all seasons do",
    ...harvestYears,
  ).optional(),
  spotsPaired: withDefault(
    yesOrNo("Whether the n-th spot of each case lay beside the n-th of the others"),
    false,
  ),
};

export type CountsPart = z.output<typeof countsFields>;
export type SpotPart = CountsPart["spots"][number];
