import { describe, expect, test } from "vitest";
import { monthColumns } from "../../../web/forms/edits/pasted.ts";
import { cellWithUnit, withPoint } from "../../../web/forms/withUnit.ts";
import { cellValue } from "../../../web/views/field/counts/cellText.ts";
import { pastedSpots } from "../../../web/views/field/counts/edits.ts";
import { columnsOf } from "../../../web/views/field/counts/columns.ts";
import { pastePlants } from "../../../web/views/field/dig/plants.ts";
import { withPasted } from "../../../web/views/field/money/edits.ts";
import { pasteRows } from "../../../web/views/field/samples/edits.ts";
import { pastedPairs } from "../../../web/views/field/strips/edits.ts";

/** Every table of the page: what it makes of a block, as the texts and numbers that it writes into its first column. */
const tables: Readonly<
  Record<string, { readonly unit: string; paste: (cells: string[][]) => readonly unknown[] }>
> = {
  months: {
    unit: "in",
    paste: (cells) => monthColumns(cells)[0]!.map((text) => cellWithUnit(text, "in")),
  },
  "plants dug": {
    unit: "in",
    paste: (cells) =>
      pastePlants(
        { evidence: { rootDepths: [{ depths: [] }] } },
        cells,
        { group: 0, plant: 0 },
        "in",
      ).flatMap(([, depths]) => depths as string[]),
  },
  cores: {
    unit: "g",
    paste: (cells) =>
      pasteRows([], cells, { row: 0, column: 0 }, [{ key: "dryMass", word: "Dry", unit: "g" }]).map(
        ({ dryMass }) => dryMass,
      ),
  },
  "spots counted": {
    unit: "",
    paste: (cells) => {
      const columns = columnsOf("wheat", "spikelets", [], false);
      const column = columns.findIndex(({ key }) => key === "kernelsPerSpikelet");
      return pastedSpots([], cells, { row: 0, column }, columns, () => "").map(
        ({ kernelsPerSpikelet }) => kernelsPerSpikelet,
      );
    },
  },
  strips: {
    unit: "bu/ac",
    paste: (cells) => pastedPairs([], cells, { pair: 0, side: 0 }, "bu/ac").map(([first]) => first),
  },
  costs: {
    unit: "USD/ac",
    paste: (cells) =>
      withPasted({ items: [], at: 0, key: "amount", cells, what: "costs", each: "USD/ac" }).map(
        (item) => (item as { amount: string }).amount,
      ),
  },
};

describe.each(Object.entries(tables))("a block pasted into the table of %s", (_, { unit, paste }) => {
  const said = (number: string) => (unit === "" ? Number(number) : `${number} ${unit}`);

  test("leaves its head out", () =>
    expect(paste([["Weighed by hand"], ["12"], ["14.5"]])).toEqual([said("12"), said("14.5")]));

  test("may have decimal commas", () =>
    expect(paste([["12,5"], ["3,25"]])).toEqual([said("12.5"), said("3.25")]));
});

test("a row of words is a head only above numbers", () => {
  const cells = [["deep ripping"], ["hauling"]];
  const items = withPasted({ items: [], at: 0, key: "name", cells, what: "costs", each: "USD/ac" });
  expect(items.map((item) => (item as { name: string }).name)).toEqual(["deep ripping", "hauling"]);
});

test("costs with their head and decimal commas", () => {
  const cells = [
    ["Item", "Amount", "Added or reduced", "For each", "Years", "Interest"],
    ["ripping", "45,50", "Added", "acre", "4", "7,5"],
  ];
  expect(withPasted({ items: [], at: 0, key: "name", cells, what: "costs", each: "USD/ac" })).toEqual([
    { name: "ripping", amount: "45.50 USD/ac", kind: "added", per: "acre", years: 4, interest: "7.5 %" },
  ]);
});

test.each([
  ["12,5", "12.5"],
  ["-0,125 C", "-0.125 C"],
  ["1,110", "1,110"],
  ["24,000 plants/ac", "24,000 plants/ac"],
  ["12,3456", "12.3456"],
  ["1,2,3", "1,2,3"],
  ["14, 16", "14, 16"],
  ["about 12,5", "about 12,5"],
])("a number in a cell: %j", (text, read) => expect(withPoint(text)).toBe(read));

test("heads measured across, with decimal commas", () =>
  expect(cellValue("18,5; 19,0 cm", "quantities", "in")).toEqual(["18.5 in", "19.0 cm"]));
