import { describe, expect, test } from "vitest";
import { cellValue, itemsOf, pasted, pastedCells, type Table } from "../../../../web/forms/edits/cells.ts";
import { withPoint } from "../../../../web/forms/withUnit.ts";
import type { Json } from "../../../../web/state/json.ts";
import { changed, getAt } from "../../../../web/state/path.ts";
import { columnsOf, spotsTable } from "../../../../web/views/field/counts/columns.ts";
import { plantsTable } from "../../../../web/views/field/dig/plants.ts";
import { itemsTable } from "../../../../web/views/field/money/edits.ts";
import { coresTable, readingsTable } from "../../../../web/views/field/samples/edits.ts";
import { pairsTable } from "../../../../web/views/field/strips/edits.ts";
import { monthsTable } from "../../../../web/views/inputs/monthsTable.ts";

const spots = (crop: string, way: "diameters" | "kernels" | "rows" | "spikelets") =>
  spotsTable("evidence.counts[0]", columnsOf(crop, way, [], true), "us", () => undefined);
const cores = coresTable(0, "ring", "us");
const readings = readingsTable("us");
const strips = pairsTable(["a", "b"], "bu/ac");
const dug = { evidence: { rootDepths: [{ case: "a" }, { case: "b" }] } };
const plants = plantsTable(dug.evidence.rootDepths, "in");
const costs = itemsTable("costs", "USD/ac");
const layered = { soil: { layers: [{ name: "top" }] } };
const counted = { evidence: { counts: [{ case: "a" }] } };

/** Every table of the page, and a scenario that has room for it. */
const tables: Readonly<Record<string, readonly [Table, Json]>> = {
  months: [monthsTable("us"), {}],
  "plants dug": [plants, dug],
  "cores by volume": [coresTable(0, "volume", "metric"), layered],
  "cores by their ring": [cores, layered],
  "penetrometer readings": [readings, {}],
  "corn counted": [spots("corn", "rows"), counted],
  "wheat counted": [spots("winter wheat", "spikelets"), counted],
  "sunflower counted": [spots("sunflower", "diameters"), counted],
  strips: [strips, {}],
  costs: [costs, {}],
  returns: [itemsTable("returns", "EUR/ha"), {}],
};

function after([table, scenario]: readonly [Table, Json], cells: string[][], row = 0, column = 0): Json {
  return changed(scenario, pasted(table, scenario, cells, { row, column }));
}

const written = (one: readonly [Table, Json], cells: string[][], column: number): (Json | undefined)[] =>
  cells.map((_, row) => getAt(after(one, cells, 0, column), one[0].at(row, column)));

describe.each(Object.entries(tables))("a block pasted into the table of %s", (_, one) => {
  const [{ columns }] = one;
  const numbers = columns.flatMap(({ kind, unit, pastedUnit = unit }, c) =>
    kind === "word" ? [] : [{ c, kind, unit: pastedUnit ?? "" }],
  );
  const said = (number: string, { kind, unit }: (typeof numbers)[number]): Json => {
    const value = kind?.startsWith("number") ? Number(number) : `${number} ${unit}`.trim();
    return kind === "numbers" || kind === "quantities" ? [value] : value;
  };

  test("leaves its head out and adds rows, in every column", () => {
    for (const own of numbers) {
      const [first, second] = written(one, [["Weighed by hand"], ["12"], ["14.5"]], own.c);
      expect([first, second]).toEqual([said("12", own), said("14.5", own)]);
    }
  });

  test("may have decimal commas", () => {
    // But where a comma parts what was counted of several heads.
    for (const own of numbers.filter(({ kind }) => kind !== "numbers"))
      expect(written(one, [["12,5"], ["3,25"]], own.c)).toEqual([said("12.5", own), said("3.25", own)]);
  });

  test("stays within the columns there are, and touches no cell beside it", () => {
    const last = columns.length - 1;
    const before = after(one, [["1", "2"].slice(0, columns.length)]);
    const now = changed(before, pasted(one[0], before, [["7", "8", "9"]], { row: 0, column: last }));
    for (let c = 0; c < last; c++)
      expect(getAt(now, one[0].at(0, c))).toEqual(getAt(before, one[0].at(0, c)));
    expect(JSON.stringify(now)).not.toMatch(/[89]\b/);
  });
});

const wheat = spots("grain sorghum", "kernels");
const two = changed(dug, [
  ["evidence.rootDepths[0].depths", ["20 in", "22 in", "21 in"]],
  ["evidence.rootDepths[1].depths", ["25 in", "27 in"]],
]);
const pass = { money: { costs: [{ name: "pass", amount: "3 USD/ac" }] } };
const logged = { soil: { penetrometer: { readings: [{ depth: "2 in", resistance: "90 psi" }] } } };
const cored = changed(layered, [["soil.layers[0].cores", [{ dryMass: "1 g", stoneMass: "4 g" }]]]);
const spotted = changed(counted, [
  ["evidence.counts[0].spots", [{ heads: 1 }, { heads: 2, kernelsPerHead: [5] }]],
]);
const paired = { evidence: { strips: { yields: [["1 lb/ac", null]] } } };

/** Cells as they stand in a spreadsheet: "|" between columns, "/" between rows. */
const cellsIn = (text: string) => text.split(" / ").map((row) => row.split("|").map((cell) => cell.trim()));

test.each<[string, readonly [Table, Json], string, [row: number, column: number], string, Json]>([
  [
    "plants go under those there are, into the columns there are",
    [plants, two],
    "over | beside | third / 20 | 30 | 99 / 21.5 | 31 in | 99",
    [1, 0],
    "evidence.rootDepths",
    [
      { case: "a", depths: ["20 in", "20 in", "21.5 in"] },
      { case: "b", depths: ["25 in", "30 in", "31 in"] },
    ],
  ],
  [
    "plants past the last leave a blank before them",
    [plants, two],
    "1 / 2",
    [3, 1],
    "evidence.rootDepths[1].depths",
    ["25 in", "27 in", "", "1 in", "2 in"],
  ],
  [
    "readings go over those there are and past them",
    [readings, logged],
    "in | psi / 3 | 120 | / 6 | 2 MPa",
    [0, 0],
    "soil.penetrometer.readings",
    [
      { depth: "3 in", resistance: "120 psi" },
      { depth: "6 in", resistance: "2 MPa" },
    ],
  ],
  [
    "what a new row needs is a blank to be filled in",
    [readings, logged],
    "5 / 7",
    [0, 1],
    "soil.penetrometer.readings",
    [
      { depth: "2 in", resistance: "5 psi" },
      { depth: "", resistance: "7 psi" },
    ],
  ],
  [
    "an empty cell takes out what stood there, but leaves a blank where a core needs it",
    [cores, cored],
    "5 | | | | ",
    [0, 0],
    "soil.layers[0].cores",
    [{ wetMass: "5 g", dryMass: "" }],
  ],
  [
    "spots go down and to the right",
    [wheat, spotted],
    "Heads | Kernels / 31 | 980, 1110 / 28 |",
    [1, 0],
    "evidence.counts[0].spots",
    [{ heads: 1 }, { heads: 31, kernelsPerHead: [980, 1110] }, { heads: 28 }],
  ],
  [
    "strips keep to their two columns, and an empty cell is one that is missing",
    [strips, paired],
    "a | b | note / 60 | 64 | wet / 55 |",
    [0, 0],
    "evidence.strips.yields",
    [
      ["60 bu/ac", "64 bu/ac"],
      ["55 bu/ac", null],
    ],
  ],
  [
    "a strip beside one that is not there",
    [strips, paired],
    "60 / 61",
    [0, 1],
    "evidence.strips.yields",
    [
      ["1 lb/ac", "60 bu/ac"],
      [null, "61 bu/ac"],
    ],
  ],
  [
    "costs go over those there are and make the rest; their empty cells change nothing",
    [costs, pass],
    "ripping | 18 | Added | | 4 | 7 / | 2.5",
    [0, 0],
    "money.costs",
    [
      { name: "ripping", amount: "18 USD/ac", kind: "added", years: 4, interest: "7 %" },
      { name: "cost 2", amount: "2.5 USD/ac" },
    ],
  ],
  ["an amount with its own unit", [costs, pass], "9 EUR/ha", [0, 1], "money.costs[0].amount", "9 EUR/ha"],
  [
    "costs with their head and decimal commas",
    [costs, {}],
    "Item | Amount | Added or reduced | For each | Years | Interest / ripping | 45,50 | Added | acre | 4 | 7,5",
    [0, 0],
    "money.costs",
    [{ name: "ripping", amount: "45.50 USD/ac", kind: "added", per: "acre", years: 4, interest: "7.5 %" }],
  ],
  [
    "a row of words is a head only above numbers",
    [costs, {}],
    "deep ripping / hauling",
    [0, 0],
    "money.costs",
    [
      { name: "deep ripping", amount: "10 USD/ac" },
      { name: "hauling", amount: "10 USD/ac" },
    ],
  ],
])("%s", (_, one, cells, [row, column], path, expected) =>
  expect(getAt(after(one, cellsIn(cells), row, column), path)).toEqual(expected),
);

describe("months from a spreadsheet", () => {
  const twelve = Array.from({ length: 12 }, (_, month) => String(month + 1));
  const rain = twelve.map((n) => `${n} in`);
  const ofText = (text: string, row = 0) =>
    getAt(after([monthsTable("us"), {}], pastedCells(text)!, row), "weather.monthlyNormals");
  test("run down, with head and names of months", () =>
    expect(ofText(["Month\tRain\tDays", ...twelve.map((n) => `M\t${n}\t${n}`)].join("\r\n"))).toEqual({
      rain,
      wetDays: twelve.map((n) => `${n} days`),
    }));
  test("run across", () =>
    expect(ofText(`${twelve.join("\t")}\n${twelve.join("\t")}\n`)).toEqual({
      rain,
      wetDays: twelve.map((n) => `${n} days`),
    }));
  test("of one column", () => expect(ofText(twelve.join("\n"))).toEqual({ rain }));
  test("end with the year, and are twelve at all times", () =>
    expect(ofText("1\n2\n3", 10)).toEqual({
      rain: [...Array.from({ length: 10 }, () => ""), "1 in", "2 in"],
    }));
  test("one cell alone is pasted as any text", () => expect(pastedCells("0.6 in")).toBeNull());
});

describe("what is typed into a cell", () => {
  test("numbers of several heads, parted as one likes", () => {
    expect(itemsOf("980, 1110 870; 12")).toEqual(["980", "1110", "870", "12"]);
    expect(itemsOf("14,16,16")).toEqual(["14", "16", "16"]);
    expect(itemsOf("1,110, 980")).toEqual(["1,110", "980"]);
  });
  test.each([
    ["numbers", "", "14, 16", [14, 16]],
    ["numbers", "", "14, about 16", [14, "about", 16]],
    ["numbers", "", "  ", undefined],
    ["number", "", "31", 31],
    ["number", "", "3l", "3l"],
    ["quantities", "in", "6, 5.5 in; 14 cm", ["6 in", "5.5 in", "14 cm"]],
    ["quantities", "in", "6 5.5", ["6 in", "5.5 in"]],
    ["quantities", "in", "18,5; 19,0 cm", ["18.5 in", "19.0 cm"]],
    ["quantity", "%", "88", "88 %"],
    ["quantity", "", "17 ft 5 in", "17 ft 5 in"],
    ["quantity", "bu/ac", "sixty", "sixty"],
    ["word", "", "a cost ", "a cost "],
  ] as const)("%s in %j: %j", (kind, unit, text, value) =>
    expect(cellValue(text, { kind, unit })).toEqual(value),
  );
  test("a strip that is missing may be told so; a choice in any case", () => {
    expect(["", " ", "missing", "-"].map((text) => cellValue(text, strips.columns[0]!))).toEqual(
      Array.from({ length: 4 }, () => null),
    );
    expect(cellValue("3900 kg/ha", strips.columns[0]!)).toBe("3900 kg/ha");
    expect(cellValue("Reduced", costs.columns[2]!)).toBe("reduced");
    expect(cellValue("18", costs.columns[1]!)).toBe("18");
  });
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
