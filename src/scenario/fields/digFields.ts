import { choice, date, group, list, quantity, text, yesOrNo } from "./fields.ts";
import { rootWays } from "../../evidence/dig/dig.ts";
import { rootDepthAboveZero } from "./facts/limits.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Dug plants in a scenario file. */

const rootDepthsFields = group(
  {
    case: text("The case these plants stood in"),
    date: date("Day they were dug, such as 2021-07-14"),
    rowPosition: text('Where the row is, such as "wheel track"', 60).optional(),
    depths: list(
      quantity("depth", { means: "Deepest root of one plant", within: rootDepthAboveZero }),
      "One depth a plant",
      { atMost: 500 },
    ),
    roots: list(
      choice(rootWays, "How the main roots of one plant went on"),
      "How the main roots went on: a word for each plant, in the order of the depths, or one word for all. Left out: not told",
      { atMost: 500 },
    ).optional(),
    turnedAt: list(
      quantity("depth", {
        means: "Where the roots of one plant turned aside",
        within: rootDepthAboveZero,
      }),
      "Where roots turned aside, of those plants that did: told with the dig and checked against the dense layer; moves no figure. Left out: not told",
      { atMost: 500 },
    ).optional(),
  },
  "Plants dug in one case",
);

/** The keys of `evidence` that tell of the dig. */
export const digShape = {
  rootDepths: list(rootDepthsFields, "Dug plants, case by case", { atMost: 100 }).optional(),
  plantsPaired: withDefault(
    yesOrNo("Whether the n-th plant of each case stood beside the n-th of the others"),
    false,
  ),
  denseLayer: text(
    "The layer whose passage for roots is fitted to the dig. Left out: the one that slows roots most",
    60,
  ).optional(),
  fit: withDefault(
    choice(
      ["passage", "penetration limit"],
      "What is fitted: the dense layer's passage, or the penetrometer reading at which roots stop",
    ),
    "passage",
  ),
  digDecides: withDefault(
    yesOrNo("Whether the fit takes the place of density or penetrometer in the answer"),
    true,
    "what was dug goes before what density suggests",
  ),
};
