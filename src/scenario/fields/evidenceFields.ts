import { countsShape } from "./countsFields.ts";
import { digShape } from "./digFields.ts";
import { group, quantity } from "./fields.ts";
import { stripsShape } from "./stripsFields.ts";
import { withDefault } from "./facts/withDefault.ts";

/** What was measured in the field. Cores and penetrometer readings stand with the soil. */
export const evidenceFields = group(
  {
    confidence: withDefault(
      quantity("share", {
        means: "Of every interval: how often such an interval holds what it is about",
        within: { from: 0.5, to: 0.999, says: "50 to 99.9 %" },
      }),
      0.95,
      "as trials are usually judged",
    ),
    ...digShape,
    ...countsShape,
    ...stripsShape,
  },
  "What was measured in the field",
);
