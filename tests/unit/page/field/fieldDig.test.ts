import { describe, expect, test } from "vitest";
import { digAnswer, type DigAnswer, type DigFitAnswer } from "../../../../src/answer/dig/digAnswer.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { dayNumber } from "../../../../src/quantity/calendar.ts";
import {
  deepestShownMm,
  dugLayout,
  pairedColumns,
  pencilRoot,
  plantX,
} from "../../../../web/pictures/dig/dugRootsLayout.ts";
import { dugTable, frontsByGroup } from "../../../../web/pictures/dig/dugRootsTable.ts";
import { fittedAxis, fittedTable } from "../../../../web/pictures/kit/fittedAxis.ts";
import type { Json } from "../../../../web/state/json.ts";
import { changed, getAt } from "../../../../web/state/path.ts";
import {
  addDug,
  closeUp,
  depthsOf,
  dugGroupsIn,
  firstPlants,
  hasGaps,
  likelyDate,
  plantsTable,
  removeDug,
  removePlant,
  rowsOf,
  wayOf,
} from "../../../../web/views/field/dig/plants.ts";
import { addCore, addReading, removeCore, removeReading } from "../../../../web/views/field/samples/edits.ts";

const two: Json = {
  evidence: {
    rootDepths: [
      { case: "a", date: "2024-07-18", depths: ["20 in", "22 in", "21 in"] },
      { case: "b", date: "2024-07-18", depths: ["25 in", "27 in"] },
    ],
    plantsPaired: true,
    digDecides: false,
    spotsPaired: true,
  },
};
const typed = (group: number, plant: number, value: string) =>
  changed(two, plantsTable(dugGroupsIn(two), "in").write(two, [{ row: plant, column: group, value }]));
const depthsIn = (scenario: Json) => dugGroupsIn(scenario).map(depthsOf);

describe("plants dug, as entered", () => {
  test("begin with the first two cases and a blank plant each", () => {
    const begun = changed({}, firstPlants(["a", "b", "c"], "2024-07-18"));
    expect(getAt(begun, "evidence.rootDepths")).toEqual([
      { case: "a", date: "2024-07-18", depths: [""] },
      { case: "b", date: "2024-07-18", depths: [""] },
    ]);
  });

  test("go on in the row after the last", () => {
    expect(rowsOf(dugGroupsIn(two))).toBe(4);
    expect(depthsIn(typed(1, 2, "26.5 in"))[1]).toEqual(["25 in", "27 in", "26.5 in"]);
  });

  test("lose the last when it is emptied, and keep a blank between others until it is closed up", () => {
    expect(depthsIn(typed(0, 2, ""))[0]).toEqual(["20 in", "22 in"]);
    const gap = typed(0, 1, "");
    expect(depthsIn(gap)[0]).toEqual(["20 in", "", "21 in"]);
    expect(hasGaps(dugGroupsIn(gap))).toBe(true);
    expect(depthsIn(changed(gap, closeUp(gap)))).toEqual([
      ["20 in", "21 in"],
      ["25 in", "27 in"],
    ]);
    expect(hasGaps(dugGroupsIn(two))).toBe(false);
  });

  test("go as neighbours, row by row", () => {
    expect(depthsIn(changed(two, removePlant(two, 0)))).toEqual([["22 in", "21 in"], ["27 in"]]);
  });

  test("take their own words along, and leave one word for all as it is", () => {
    const told = (roots: readonly string[]) => changed(two, [["evidence.rootDepths[0].roots", roots]]);
    const each = told(["straight", "stopped", "stopped"]);
    const left = changed(each, removePlant(each, 0));
    expect(getAt(left, "evidence.rootDepths[0].roots")).toEqual(["stopped", "stopped"]);
    const all = told(["stopped"]);
    expect(getAt(changed(all, removePlant(all, 0)), "evidence.rootDepths[0].roots")).toEqual(["stopped"]);
    expect([each, left, all, two].map((one) => wayOf(dugGroupsIn(one)[0]!))).toEqual([
      null,
      "stopped",
      "stopped",
      undefined,
    ]);
  });

  test("written over those of an invented field, do not take over that its dig is shown only", () => {
    const decidesIn = (scenario: Json) => getAt(scenario, "evidence.digDecides");
    const demo = changed(two, [["invented", true]]);
    const write = (scenario: Json) =>
      plantsTable(dugGroupsIn(scenario), "in").write(scenario, [{ row: 0, column: 0, value: "19 in" }]);
    expect(decidesIn(changed(demo, write(demo)))).toBeUndefined();
    expect(decidesIn(changed(demo, addDug(demo, ["a", "b", "c"], "2020-01-01")))).toBeUndefined();
    expect(decidesIn(changed(two, write(two)))).toBe(false);
  });

  test("leave nothing of the dig behind with the last of them, and all else alone", () => {
    const one = changed(two, removeDug(two, 0));
    expect(dugGroupsIn(one).map((group) => group["case"])).toEqual(["b"]);
    expect(changed(one, removeDug(one, 0))).toEqual({ evidence: { spotsPaired: true } });
    const single: Json = { evidence: { rootDepths: [{ case: "a", date: "x", depths: ["3 in"] }] } };
    expect(changed(single, removePlant(single, 0))).toEqual({});
  });

  test("go on with a case that was not dug yet", () => {
    const three = changed(two, addDug(two, ["a", "b", "c"], "2020-01-01"));
    expect(getAt(three, "evidence.rootDepths[2]")).toEqual({ case: "c", date: "2024-07-18", depths: [""] });
  });
});

describe("a date to begin with", () => {
  const june = { month: 6, day: 1 };
  test("is today in a season, and some weeks after sowing out of one", () => {
    expect(likelyDate(june, dayNumber(2025, 7, 20), null)).toBe("2025-07-20");
    expect(likelyDate(june, dayNumber(2025, 12, 20), null)).toBe("2025-07-16");
    expect(likelyDate(june, dayNumber(2025, 2, 1), null)).toBe("2024-07-16");
  });
  test("lies within the record", () => {
    expect(likelyDate(june, dayNumber(2025, 7, 20), dayNumber(2019, 12, 31))).toBe("2019-07-16");
  });
});

const spread = { n: 3, mean: 510, median: 500, sd: 20, variation: 0.04, smallest: 490, largest: 540 };
const group = (name: string, date: string) => ({
  case: name,
  date,
  rowPosition: null,
  depthMm: spread,
  middleIntervalMm: { low: 450, high: 550 },
  assumed: null,
});
const fittedCase = (name: string) => ({
  case: name,
  value: 0.4,
  low: 0.2,
  high: 0.8,
  otherwise: 0.5,
  tried: 16,
  tooDeepShare: 0,
  tooShallowShare: 0,
  shutMm: 200,
  openMm: 700,
  observedMm: 500,
  simulatedMm: 502,
  verdict: "meets" as const,
  told: { reading: "slowed" as const, by: "their depth" as const, stoppedShare: null },
  stop: { depthMm: 500, low: 450, high: 550 },
});
const fit: DigFitAnswer = {
  what: "passage",
  layer: "pan",
  ownYear: true,
  decides: true,
  cases: [fittedCase("a")],
  pairs: [],
  undug: [],
};
const dig: DigAnswer = {
  confidence: 0.9,
  paired: false,
  groups: [group("a", "2024-06-20"), group("a", "2024-07-18"), group("b", "2024-07-18")],
  differences: [],
  fit,
};

describe("the face of the pit", () => {
  test("shows a front only where one was fitted, on the day it is told of", () => {
    expect(frontsByGroup(dig)).toEqual([502, null, null]);
    expect(frontsByGroup({ ...dig, fit: null })).toEqual([null, null, null]);
    const table = dugTable(dig, shownIn("metric"));
    expect(table.rows.map((row) => row.at(-1))).toEqual(["502", "–", "–"]);
    expect(table.rows[0]?.slice(0, 5)).toEqual(["a", "2024-06-20", "3", "500", "450 to 550"]);
  });

  test.each([
    [340, 2, 1],
    [620, 3, 2],
    [980, 6, 5],
  ])(
    "%i px: columns and differences stand side by side, plants within their column",
    (width, groups, others) => {
      const { columns, differences, face, width: whole } = dugLayout(width, groups, others);
      expect(columns).toHaveLength(groups);
      columns.slice(1).forEach((box, i) => expect(box.x).toBeCloseTo(columns[i]!.x + columns[i]!.width));
      const end = columns.at(-1)!;
      expect(end.x + end.width).toBeCloseTo(face.x + face.width);
      expect(differences[0]!.x).toBeGreaterThan(face.x + face.width);
      const last = differences.at(-1)!;
      expect(last.x + last.width).toBeLessThanOrEqual(whole);
      for (const plant of [0, 4]) {
        expect(plantX(columns[0]!, plant, 5)).toBeGreaterThan(columns[0]!.x);
        expect(plantX(columns[0]!, plant, 5)).toBeLessThan(columns[0]!.x + 0.78 * columns[0]!.width);
      }
    },
  );

  test("reaches below the deepest root", () => {
    expect(deepestShownMm([500, 700])).toBeGreaterThan(700);
    expect(deepestShownMm([10])).toBeGreaterThan(100);
  });

  test("a root ends at the depth of its plant, under it", () => {
    const { main } = pencilRoot(50, 10, 210, 3);
    expect(main.startsWith("M50.0 10.0")).toBe(true);
    expect(main.endsWith("L50.0 210.0")).toBe(true);
  });

  test("neighbours are of one day, different cases, and as many", () => {
    const one = { case: "a", date: "d1", plants: 4 };
    expect(pairedColumns([one, { ...one, case: "b" }, { ...one, case: "c", date: "d2" }])).toEqual([[0, 1]]);
    expect(pairedColumns([one, { ...one, case: "b", plants: 3 }])).toEqual([]);
    expect(pairedColumns([one, { ...one, date: "d2" }])).toEqual([]);
  });
});

describe("what is fitted", () => {
  test("a passage from shut to open, a limit from nothing past the highest", () => {
    const passage = fittedAxis(fit, 0, 500);
    expect([passage.from, passage.to]).toEqual([0, 1]);
    const limit = { ...fit, what: "penetration limit" as const, cases: [{ ...fittedCase("a"), high: 3.3 }] };
    const axis = fittedAxis(limit, 0, 500);
    expect(axis.from).toBe(0);
    expect(axis.to).toBeGreaterThanOrEqual(3.3);
  });
  test("reads as a table", () => {
    expect(fittedTable(fit, 0.9).rows).toEqual([["a", "40 %", "20 % to 80 %", "50 %", "yes"]]);
  });
});

describe("soil samples, as entered", () => {
  const soil: Json = {
    soil: {
      layers: [
        { name: "top", cores: [{ wetMass: "512 g", dryMass: "430 g", volume: "318 cm^3" }] },
        { name: "sub" },
      ],
      startingWater: { from: "cores", shareBelow: "50 %" },
    },
  };
  test("a core more comes in the same ring", () => {
    expect(getAt(changed(soil, addCore(soil, 1, 2)), "soil.layers[1].cores")).toEqual([
      { volume: "318 cm^3", dryMass: "" },
    ]);
  });
  test("the last core takes the water from cores along", () => {
    expect(changed(soil, removeCore(soil, 0, 0, 2))).toEqual({
      soil: { layers: [{ name: "top" }, { name: "sub" }] },
    });
    const both = changed(soil, addCore(soil, 1, 2));
    expect(getAt(changed(both, removeCore(both, 0, 0, 2)), "soil.startingWater.from")).toBe("cores");
  });
  test("the last reading takes the log along", () => {
    const log: Json = {
      soil: { penetrometer: { readings: [{ depth: "2 in", resistance: "90 psi" }], wetness: "dry" } },
    };
    expect(changed(log, removeReading(log, 0))).toEqual({});
    expect(getAt(changed(log, addReading(log)), "soil.penetrometer.readings[1]")).toEqual({
      depth: "",
      resistance: "",
    });
  });
});

describe("the interval of a middle depth", () => {
  const answered = (depthsMm: readonly number[]) =>
    digAnswer(
      {
        groups: [{ field: "", caseIndex: 0, day: 0, rowPosition: null, depthsMm }],
        paired: false,
        confidence: 0.95,
        fitted: null,
        drives: true,
      },
      null,
      ["a"],
    ).groups[0]!;
  test("is t about the median, with the median's own error (t table: 2.571 for 5 degrees of freedom)", () => {
    // Mean 500, squares about it 2 x (50^2 + 40^2).
    const { middleIntervalMm: found } = answered([450, 460, 500, 500, 540, 550]);
    const reach = (2.571 * 1.2533 * Math.sqrt(8200 / 5)) / Math.sqrt(6);
    expect(found.high - 500).toBeCloseTo(reach, 1);
    expect(500 - found.low).toBeCloseTo(reach, 1);
  });
  test("takes the assumed spread for one plant (normal table: 1.960), and does not come out of the ground", () => {
    const { middleIntervalMm: found, assumed } = answered([500]);
    expect(assumed).toBe("one plant");
    expect(found.high).toBeCloseTo(500 * (1 + 0.2 * 1.96), 1);
    expect(answered([10, 200]).middleIntervalMm.low).toBe(0);
  });
});
