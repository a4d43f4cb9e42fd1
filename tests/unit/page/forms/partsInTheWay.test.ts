import { describe, expect, test } from "vitest";
import { partsInTheWay, withoutParts } from "../../../../web/forms/edits/partsInTheWay.ts";
import type { Json } from "../../../../web/state/json.ts";
import { demoAsWritten } from "../../../support/demos.ts";

const demo = demoAsWritten("sorghum-over-plough-pan") as Json;
const problem = (field: string) => ({ field, expected: "x", found: "y", mend: "z" });
const said = (...fields: string[]) => partsInTheWay(fields.map(problem), demo).map((part) => part.said);

describe("parts in the way of the water's answer", () => {
  test("are those that the problems are about", () => {
    expect(said("evidence.counts[0].kernelWeight", "money.price")).toEqual(["what was counted", "the money"]);
    expect(said("evidence.rootDepths[1].date")).toEqual(["what was dug"]);
    expect(said("evidence.counts")).toEqual(["what was counted"]);
  });
  test("are none where anything else is wrong too, or nothing is", () => {
    expect(said("money.price", "soil.layers[0].bottom")).toEqual([]);
    expect(said("moneyed")).toEqual([]);
    expect(said()).toEqual([]);
  });
  test("are none that the scenario does not have", () => {
    expect(partsInTheWay([problem("rowPositions.machine")], {})).toEqual([]);
  });
  test("leave the rest as it was", () => {
    const left = withoutParts(
      demo,
      partsInTheWay([problem("evidence.counts[0].kernelWeight")], demo),
    ) as never as {
      readonly evidence: Record<string, unknown>;
    };
    const { counts: _, spotsPaired: __, ...others } = (demo as never as typeof left).evidence;
    expect(left).toEqual({ ...(demo as object), evidence: others });
  });
});
