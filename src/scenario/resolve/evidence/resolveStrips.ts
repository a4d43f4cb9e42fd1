import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { Strips } from "../../../evidence/strips.ts";
import { quoteFound } from "../../../problem.ts";
import { tryQuantity } from "../../../quantity/index.ts";
import { caseNamed } from "../../caseNamed.ts";
import { complain, orDefault, type Notebook } from "../notebook.ts";
import { stripsFields, type StripsPart } from "../../fields/stripsFields.ts";

/**
 * Strips as plain values; null where there are none.
 *
 * @param unit how the crop is counted; null where that has faults of its own, and yields in bushels are passed over
 */
export function resolveStrips(
  written: StripsPart | undefined,
  confidence: number,
  caseNames: readonly string[],
  unit: YieldUnit | null,
  notebook: Notebook,
): Strips | null {
  if (written === undefined) return null;
  const field = "evidence.strips";
  const [first, second] = written.cases.map((name, c) =>
    caseNamed(name, caseNames, `${field}.cases[${c}]`, notebook),
  ) as [number, number];
  if (first >= 0 && first === second) {
    complain(
      notebook,
      `${field}.cases[1]`,
      "another case than the first",
      `"${written.cases[1]}"`,
      "name the two cases that were compared",
    );
  }
  const pairs = written.yields.map((pair, p) => {
    const [a, b] = pair.map((found, s) =>
      found === null ? null : yieldOf(found, unit, `${field}.yields[${p}][${s}]`, notebook),
    );
    return [a ?? null, b ?? null] as const;
  });
  const detectKgPerHa =
    written.detect === undefined ? null : yieldOf(written.detect, unit, `${field}.detect`, notebook);
  if (detectKgPerHa === 0) {
    complain(
      notebook,
      `${field}.detect`,
      'a yield more than 0, such as "5 bu/ac"',
      quoteFound(written.detect),
      "no number of pairs tells nothing from nothing",
    );
  }
  const usual = stripsFields.shape.chance.byDefault;
  const chance =
    written.detect === undefined
      ? (written.chance ?? usual.value)
      : orDefault(notebook, written.chance, usual, `${field}.chance`);
  return {
    caseIndexes: [first, second],
    pairs,
    year: written.year ?? null,
    confidence,
    detectKgPerHa,
    chance,
  };
}

function yieldOf(
  found: string | number,
  unit: YieldUnit | null,
  field: string,
  notebook: Notebook,
): number | null {
  const kgPerBushel = unit?.us === "bu/ac" ? unit.kgPerUsUnit : null;
  const read = tryQuantity(found, "yieldPerArea", { kgPerBushel });
  if (typeof read === "number") return read;
  if (unit !== null)
    complain(
      notebook,
      field,
      read.expected,
      quoteFound(found),
      kgPerBushel === null ? "this crop is not counted in bushels: write lb/ac or kg/ha" : read.mend,
    );
  return null;
}
