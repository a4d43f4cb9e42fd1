import type { Generated } from "../../src/answer/runs/answerCache.ts";
import type { Json } from "../state/json.ts";
import type { Attachments } from "../state/scenarioStore.ts";
import type { PackedRuns } from "./packedRuns.ts";

/** What the two workers say to each other. */

export type ToSecondWorker =
  | { readonly kind: "files"; readonly attachments: Attachments }
  /** Begin at the last run of this place in the order of the totals; ends what is under way. */
  | {
      readonly kind: "help";
      readonly id: number;
      readonly scenario: Json;
      readonly place: number;
      /** What the first worker has generated since it last said so. */
      readonly generated: Generated | null;
    }
  | { readonly kind: "stop" };

export interface FromSecondWorker {
  readonly id: number;
  readonly place: number;
  readonly runs: PackedRuns;
}
