import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { EvidencePart } from "../../fields/file.ts";
import { evidenceFields } from "../../fields/evidenceFields.ts";
import { orDefault, type Notebook } from "../notebook.ts";
import { resolveCounts } from "./resolveCounts.ts";
import { resolveDig } from "./resolveDig.ts";
import { resolveStrips } from "./resolveStrips.ts";
import type { Case, Evidence } from "../../scenario.ts";

/** What evidence needs to know of the rest of the scenario. */
export interface EvidenceGround {
  readonly caseNames: readonly string[];
  /** Undefined where a case has faults of its own. */
  readonly cases: readonly (Case | undefined)[];
  readonly cropName: string;
  /** Null where the yield has faults of its own. */
  readonly unit: YieldUnit | null;
}

/** What was measured in the field, as plain values; null where nothing was. */
export function resolveEvidence(
  written: EvidencePart | undefined,
  { caseNames, cases, cropName, unit }: EvidenceGround,
  notebook: Notebook,
): Evidence | null {
  if (written === undefined) return null;
  const confidence = orDefault(
    notebook,
    written.confidence,
    evidenceFields.shape.confidence.byDefault,
    "evidence.confidence",
  );
  const ground = { confidence, caseNames, cropName, unit };
  return {
    confidence,
    dig: resolveDig(written, confidence, caseNames, cases, notebook),
    counts: resolveCounts(written.counts, written, ground, notebook),
    strips: resolveStrips(written.strips, confidence, caseNames, unit, notebook),
  };
}
