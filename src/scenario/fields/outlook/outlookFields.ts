import { soilDepthWithin } from "../facts/limits.ts";
import { date, group, list, quantity, text } from "../fields.ts";

/** The season under way in a scenario file. */

const measuredShape = {
  moistDepth: quantity("depth", {
    means: "Push probe of that day: moist (field capacity) down to this depth; needs `shareBelow`",
    within: soilDepthWithin,
  }).optional(),
  shareBelow: quantity("share", {
    means: "Share of the available water below `moistDepth`",
    within: { from: 0, to: 1, says: "0 to 100 %" },
  }).optional(),
  layers: list(
    group(
      {
        name: text("A layer of the soil by its name", 60),
        water: text(
          'Water in the layer on that day: "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available"',
          60,
        ),
      },
      "Water of one layer",
    ),
    "Water measured layer by layer, every layer of the soil; or give `moistDepth` and `shareBelow`",
    { atMost: 60 },
  ).optional(),
};

export const outlookFields = group(
  {
    date: date(
      "The day that the outlook is of, and that its water was measured on. Left out: the last day of the record",
    ).optional(),
    ...measuredShape,
  },
  "The season under way: a day of it, and the water measured that day; `soil.startingWater` stays what the run begins with",
);

/** Water measured in one case. */
export const caseOutlookFields = group(
  measuredShape,
  "Water measured in this case on the day of `outlook.date`",
);
