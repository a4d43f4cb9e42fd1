import { tryQuantity } from "../../quantity/index.ts";
import { formFacts } from "./facts/formFacts.ts";
import { deepestRootsMm, deepestRootsSaid } from "./facts/limits.ts";
import { loose } from "./fields.ts";

/** A depth, or a depth against the first case's. */
export type RootingDepth =
  | { readonly kind: "absolute"; readonly depthMm: number }
  | { readonly kind: "relative"; readonly extraMm: number };

const expected = 'a rooting depth such as "34 in", or "+2 in" against the first case';

/** A sign in front makes it relative. */
export function rootingDepth(means: string) {
  return loose<RootingDepth>((found) => {
    const mm = tryQuantity(found, "depth");
    if (typeof mm !== "number") return { fault: { expected, mend: mm.mend } };
    if (Math.abs(mm) > deepestRootsMm)
      return {
        fault: {
          expected: `a rooting depth of at most ${deepestRootsSaid}`,
          mend: "check the number and its unit",
        },
      };
    if (typeof found === "string" && /^\s*[+\u2212-]/.test(found))
      return { value: { kind: "relative", extraMm: mm } };
    if (mm <= 0) return { fault: { expected: `${expected}, more than 0`, mend: "check the number" } };
    return { value: { kind: "absolute", depthMm: mm } };
  })
    .describe(means)
    .register(formFacts, { kind: "depth" });
}
