import type { Case } from "../../../scenario/scenario.ts";

export function named(cases: readonly Pick<Case, "name">[]): string {
  return cases.map(({ name }) => `"${name}"`).join(", ");
}
