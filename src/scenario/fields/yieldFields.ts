import { choice, group, quantity, quantityAsWritten, text } from "./fields.ts";

/** The yield line in a scenario file: yield = slope x (water use - threshold). */

const slopeFields = group(
  {
    low: quantityAsWritten(["yieldPerWater"], "Low end of the slope"),
    middle: quantityAsWritten(["yieldPerWater"], "Middle of the slope"),
    high: quantityAsWritten(["yieldPerWater"], "High end of the slope"),
  },
  "Extra yield for each extra depth of water used; not yield divided by water, which is another number. Left out: the published line's",
);

export const yieldFields = group(
  {
    line: text(
      "Which of the crop's published lines to take. Left out: the crop's usual one at the latitude of the site",
    ).optional(),
    slope: slopeFields.optional(),
    threshold: quantity("rain", {
      means: "Water use below which there is no grain",
      otherwise: "the published line's",
      within: { from: 0, to: 1000, says: "0 to 39 in (1000 mm)" },
    }).optional(),
    cap: quantityAsWritten(
      ["yieldPerArea"],
      "Yield that the crop does not go beyond here",
      "the greatest published of dryland crops, where there is one",
    ).optional(),
    unit: choice(["bu/ac", "lb/ac"], "How people count this yield; for a crop of your own").optional(),
    testWeight: quantity("testWeight", {
      means: "Mass of a bushel; for a crop of your own counted in bushels",
      within: { from: 4.98, to: 40, says: "11 to 88 lb/bu (5 to 40 kg/bu)" },
    }).optional(),
    source: text("Where the slope comes from: place, years, trial", 300).optional(),
  },
  "From water use to yield",
);
