import { afterAll, expect, test, vi } from "vitest";
import type { ZodType } from "zod";
import type { QuantityKind } from "../../../src/quantity/index.ts";
import type * as Fields from "../../../src/scenario/fields/fields.ts";

interface Limit {
  readonly kind: QuantityKind;
  readonly says: string;
  readonly field: ZodType;
}

const limits = vi.hoisted(() => [] as Limit[]);
vi.mock("../../../src/scenario/fields/fields.ts", async (original) => {
  const fields = await original<typeof Fields>();
  return {
    ...fields,
    quantity: (...[kind, plan]: Parameters<typeof fields.quantity>) => {
      const field = fields.quantity(kind, plan);
      limits.push({ kind, says: plan.within.says, field });
      return field;
    },
  };
});
// Other files share these modules: they are read anew here, and again after.
vi.resetModules();
await import("../../../src/scenario/fields/file.ts");
afterAll(() => {
  vi.doUnmock("../../../src/scenario/fields/fields.ts");
  vi.resetModules();
});

/** `2 in to 20 ft (50 to 6000 mm)` names 2 in, 20 ft, 50 mm, 6000 mm; a number without a unit has that of the next. */
function numbersSaid(says: string): string[] {
  return says.split("(").flatMap((part) => {
    const found = [
      ...part.matchAll(/(-?\d[\d.,]*)\s*((?!to\b|and\b|of\b)[A-Za-z%][^\s()]*(?: (?:day|h)\b)?)?/g),
    ].map(([, number = "", unit = ""]) => ({ number: number.replace(/[.,]$/, ""), unit }));
    return found.map(({ number, unit }, i) =>
      `${number} ${unit || found.slice(i).find((one) => one.unit)?.unit || ""}`.trim(),
    );
  });
}

test("there are limits in both systems", () => {
  expect(limits.length).toBeGreaterThan(60);
  expect(limits.filter(({ says }) => says.includes("(")).length).toBeGreaterThan(25);
});

test("every number that a limit names is let through, but for what it is said to be more than", () => {
  const refused = limits.flatMap(({ kind, says, field }) =>
    numbersSaid(says.replace(/^more than \S+ and /, ""))
      .filter((text) => !field.safeParse(text).success)
      .map((text) => `${kind}, ${says}: ${text}`),
  );
  expect([...new Set(refused)]).toEqual([]);
});
