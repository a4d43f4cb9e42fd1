import { tryMoney, type Money } from "../quantity/index.ts";
import type { YieldUnit } from "../crop/yieldLine.ts";
import type { ScenarioFile } from "./file.ts";
import { nearestName } from "../nearestName.ts";
import { complain, type Notebook } from "./notebook.ts";

/** Money, evidence and row positions: this version checks them and says that it does not use them. */
export function checkLaterParts(
  { money, evidence, rowPositions }: ScenarioFile,
  caseNames: readonly string[],
  unit: YieldUnit | null,
  notebook: Notebook,
): void {
  const unused = Object.entries({ money, evidence, rowPositions }).filter(([, part]) => part !== undefined);
  for (const [key] of unused) notebook.notes.push(`${key} is checked but not used by this version.`);

  rowPositions?.forEach((row, r) => checkCase(row.case, caseNames, `rowPositions[${r}].case`, notebook));
  evidence?.rootDepths?.forEach((dug, d) =>
    checkCase(dug.case, caseNames, `evidence.rootDepths[${d}].case`, notebook),
  );
  evidence?.strips?.cases.forEach((name, s) =>
    checkCase(name, caseNames, `evidence.strips.cases[${s}]`, notebook),
  );
  if (money !== undefined) checkMoney(money, unit, notebook);
}

function checkCase(name: string, caseNames: readonly string[], field: string, notebook: Notebook): void {
  if (caseNames.includes(name)) return;
  const near = nearestName(name, caseNames);
  const list = caseNames.map((one) => `"${one}"`).join(", ");
  complain(
    notebook,
    field,
    `the name of a case: ${list}`,
    `"${name}"`,
    near === null ? "use one of these names" : `did you mean "${near}"?`,
  );
}

function checkMoney(
  money: NonNullable<ScenarioFile["money"]>,
  unit: YieldUnit | null,
  notebook: Notebook,
): void {
  const kgPerBushel = unit?.us === "bu/ac" ? unit.kgPerUsUnit : null;
  const price = tryMoney(money.price, "mass", { kgPerBushel });
  if ("mend" in price) {
    // Read with some bushel before: what is wrong is that this crop has none.
    if (unit !== null)
      complain(
        notebook,
        "money.price",
        'a price such as "0.25 USD/lb"',
        `"${money.price}"`,
        "this crop is not counted in bushels: give the price for a lb or kg",
      );
    return;
  }
  for (const key of ["addedCost", "reducedCost"] as const) {
    const written = money[key];
    if (written === undefined) continue;
    const cost = tryMoney(written, "land") as Money;
    if (cost.currency !== price.currency)
      complain(
        notebook,
        `money.${key}`,
        `an amount in ${price.currency}, as the price is`,
        `"${written}"`,
        "use one currency",
      );
  }
}
