import { beforeAll, describe, expect, test } from "vitest";
import {
  bushelsPerAcre,
  poundsPerAcre,
  usOfKgPerHa,
  type YieldUnit,
} from "../../../src/crop/yield/yieldLine.ts";
import { answerCounts } from "../../../src/evidence/counts/countsAnswer.ts";
import { answerStrips } from "../../../src/evidence/strips.ts";
import { sayProblem } from "../../../src/problem.ts";
import { loadUnits } from "../../../src/quantity/index.ts";
import { countsShape } from "../../../src/scenario/fields/countsFields.ts";
import { group } from "../../../src/scenario/fields/fields.ts";
import { openNotebook } from "../../../src/scenario/resolve/notebook.ts";
import { problemsOf } from "../../../src/scenario/read/problems.ts";
import { resolveCounts } from "../../../src/scenario/resolve/evidence/resolveCounts.ts";
import { resolveStrips } from "../../../src/scenario/resolve/evidence/resolveStrips.ts";
import { stripsShape } from "../../../src/scenario/fields/stripsFields.ts";

beforeAll(loadUnits);

const file = group({ evidence: group({ ...countsShape, ...stripsShape }, "What was measured") }, "A file");
const caseNames = ["normal", "deeper"];
const corn: YieldUnit = bushelsPerAcre(56);

interface Read {
  readonly lines: readonly string[];
  readonly notes: readonly string[];
  readonly counts: ReturnType<typeof resolveCounts>;
  readonly strips: ReturnType<typeof resolveStrips>;
}

function read(evidence: unknown, cropName = "corn", unit: YieldUnit = corn): Read {
  const raw = { evidence };
  const parsed = file.safeParse(raw);
  if (!parsed.success)
    return {
      lines: problemsOf(parsed.error.issues, raw).map(sayProblem),
      notes: [],
      counts: null,
      strips: null,
    };
  const notebook = openNotebook();
  const part = parsed.data.evidence;
  const ground = { confidence: 0.95, caseNames, cropName, unit };
  const counts = resolveCounts(part.counts, part, ground, notebook);
  const strips = resolveStrips(part.strips, 0.95, caseNames, unit, notebook);
  return { lines: notebook.problems.map(sayProblem), notes: notebook.notes, counts, strips };
}

const spot = { ears: 18, kernelRows: [14, 16, 14], kernelsPerRow: [24, 23, 25] };
const counted = (change: object, spotChange: object = {}) => ({
  counts: [{ case: "normal", rowWidth: "30 in", spots: [{ ...spot, ...spotChange }], ...change }],
});

describe("counts that are right", () => {
  test("18 ears of 14 x 24 in a thousandth of an acre at 90 thousand a bushel are 67.2 bu/ac", () => {
    const { lines, counts } = read(
      counted({ kernelsPerBushel: 90_000 }, { kernelRows: [14], kernelsPerRow: [24] }),
    );
    expect(lines).toEqual([]);
    expect(usOfKgPerHa(answerCounts(counts!).groups[0]!.estimate.value!, corn)).toBeCloseTo(67.2, 9);
  });
  test.each([
    ["length of a tape", { rowLength: "17 ft 5.088 in" }],
    ["feet and inches by their marks", { rowLength: `17' 5.088"` }],
    ["area", { area: "0.001 ac", rowWidth: undefined }],
    ["two rows of half the length", { rows: 2 }],
  ])("%s gives the same ground", (_name, change) => {
    const { lines, counts } = read(counted(change));
    expect(lines).toEqual([]);
    expect(counts!.groups[0]!.spots[0]!.areaM2).toBeCloseTo(4.0468564224, 4);
  });
  test.each([
    ["280 g", 0.28],
    ["280 g per 1000 kernels", 0.28],
    ["280 mg/kernel", 0.28],
    ["9.877 oz", 0.28],
  ])("kernel weight %s", (kernelWeight, gram) => {
    const { lines, counts } = read(counted({ kernelWeight }));
    expect(lines).toEqual([]);
    expect(counts!.groups[0]!.weight).toMatchObject({ weighed: true });
    expect(counts!.groups[0]!.weight.middle).toBeCloseTo(gram, 4);
  });
  test("second ears add their kernels", () => {
    const { lines, counts } = read(counted({}, { secondEars: 2, secondEarKernels: [100, 140] }));
    expect(lines).toEqual([]);
    expect(counts!.groups[0]!.spots[0]!.per).toMatchObject({ secondEarKernels: 240 });
    const share = read(
      counted({}, { secondEars: 2, secondEarShare: "50 %", kernelRows: [10], kernelsPerRow: [20] }),
    );
    expect(share.counts!.groups[0]!.spots[0]!.per).toMatchObject({ secondEarKernels: 200 });
  });
  test("wet kernels weigh less at the trade's moisture", () => {
    const { counts } = read(counted({ kernelWeight: "300 g", moisture: "20 %" }));
    expect(counts!.groups[0]!.moistureFactor).toBeCloseTo(0.8 / 0.845, 12);
  });
  test("odd kernel rows are noticed, not refused", () => {
    const { lines, notes } = read(counted({}, { kernelRows: [14, 15, 17] }));
    expect(lines).toEqual([]);
    expect(notes).toEqual([
      "evidence.counts[0].spots[0].kernelRows: 15, 17 are odd; kernel rows on an ear come in pairs, so count again (common practice, no source).",
    ]);
  });
  test("wheat by heads alone takes the grain of a head from the published range", () => {
    const { lines, counts } = read(
      { counts: [{ case: "normal", rowWidth: "10 in", rowLength: "1 ft", spots: [{ heads: 30 }] }] },
      "winter wheat",
      bushelsPerAcre(60),
    );
    expect(lines).toEqual([]);
    expect(usOfKgPerHa(answerCounts(counts!).groups[0]!.estimate.value!, bushelsPerAcre(60))).toBeCloseTo(
      29.6,
      1,
    );
  });
  test("a spot without a head yields nothing", () => {
    const { lines, counts } = read({
      counts: [{ case: "normal", rowWidth: "30 in", spots: [spot, { ears: 0 }] }],
    });
    expect(lines).toEqual([]);
    expect(answerCounts(counts!).groups[0]!.spotsKgPerHa[1]).toBe(0);
  });
  test("sunflower by heads", () => {
    const { lines, counts } = read(
      {
        counts: [
          {
            case: "normal",
            rowWidth: "30 in",
            seedSize: "medium",
            filled: "91 %",
            spots: [{ heads: 21, headDiameters: ["7 in"] }],
          },
        ],
      },
      "sunflower",
      poundsPerAcre,
    );
    expect(lines).toEqual([]);
    expect(usOfKgPerHa(answerCounts(counts!).groups[0]!.estimate.value!, poundsPerAcre)).toBeCloseTo(
      1920,
      -1,
    );
  });
});

type Row = readonly [name: string, evidence: unknown, ...lines: string[]];
const at = "evidence.counts[0]";
const spotAt = `${at}.spots[0]`;

const badCounts: readonly Row[] = [
  [
    "a case that is none",
    counted({ case: "depper" }),
    `${at}.case: expected the name of a case: "normal", "deeper", found "depper"; did you mean "deeper"?`,
  ],
  [
    "text for a number",
    counted({}, { ears: "eighteen" }),
    `${spotAt}.ears: expected a whole number from 0 to 100000, found "eighteen"; write it without quotes`,
  ],
  [
    "a negative count",
    counted({}, { ears: -3 }),
    `${spotAt}.ears: expected a whole number from 0 to 100000, found -3; check the number`,
  ],
  [
    "part of an ear",
    counted({}, { ears: 17.5 }),
    `${spotAt}.ears: expected a whole number from 0 to 100000, found 17.5; check the number`,
  ],
  [
    "no spots",
    counted({ spots: [] }),
    `${at}.spots: expected a list of 1 to 200 in brackets, found an empty list; check how many there are`,
  ],
  [
    "no kernel rows",
    counted({}, { kernelRows: [0] }),
    `${spotAt}.kernelRows[0]: expected a whole number from 1 to 30, found 0; check the number`,
  ],
  [
    "too many kernel rows",
    counted({}, { kernelRows: [34] }),
    `${spotAt}.kernelRows[0]: expected a whole number from 1 to 30, found 34; check the number`,
  ],
  [
    "no ground",
    counted({ rowWidth: undefined }),
    `${spotAt}.area: expected the ground counted: rowWidth of these counts, such as "30 in", or an area, found nothing; give one of them`,
  ],
  [
    "ground twice",
    counted({}, { area: "1 m^2", rows: 2 }),
    `${spotAt}.area: expected an area, or length and number of rows, found both; leave one of them out`,
  ],
  [
    "no heads",
    counted({}, { ears: undefined }),
    `${spotAt}.heads: expected how many heads (or ears) were counted, found nothing; give heads or ears`,
  ],
  [
    "rows without kernels",
    counted({}, { kernelsPerRow: undefined }),
    `${spotAt}.kernelsPerRow: expected kernelRows and kernelsPerRow together, found nothing; give it as well`,
  ],
  [
    "kernels two ways",
    counted({}, { kernelsPerHead: [300] }),
    `${spotAt}: expected kernels counted one way: kernelsPerHead, or kernelRows and kernelsPerRow, or spikeletsPerHead and kernelsPerSpikelet, found more than one; leave the others out`,
  ],
  [
    "second ears without kernels",
    counted({}, { secondEars: 3 }),
    `${spotAt}.secondEarKernels: expected kernels of second ears, or secondEarShare of a first ear's, found nothing; give one of them`,
  ],
  [
    "a width without unit",
    counted({ rowWidth: 30 }),
    `${at}.rowWidth: expected a length such as "30 in", found 30; write the unit as ft, in, m or cm`,
  ],
  [
    "ninety for ninety thousand",
    counted({ kernelsPerBushel: 90 }),
    `${at}.kernelsPerBushel: expected 10,000 to 5,000,000 kernels in a bushel, found 90; for 90 thousand write 90000`,
  ],
  [
    "a weight without unit",
    counted({ kernelWeight: 350 }),
    `${at}.kernelWeight: expected the weight of a thousand kernels such as "350 g", found 350; write the unit as g or oz`,
  ],
  [
    "two weights",
    counted({ kernelWeight: "300 g", kernelsPerPound: 1500 }),
    `${at}.kernelsPerPound: expected one of kernelWeight, kernelsPerBushel, kernelsPerPound, found kernelWeight and kernelsPerPound; leave the others out`,
  ],
  [
    "moisture of nothing weighed",
    counted({ moisture: "20 %" }),
    `${at}.moisture: expected none where kernels are not weighed: usual weights are at the trade's moisture, found 20 %; give kernelWeight, or leave it out`,
  ],
  [
    "a misspelt key",
    counted({}, { kernelrow: [14] }),
    `${spotAt}.kernelrow: expected a key that belongs here, found "kernelrow"; did you mean "kernelRows"?`,
  ],
  [
    "pairs of unlike number",
    {
      spotsPaired: true,
      counts: [
        { case: "normal", rowWidth: "30 in", spots: [spot] },
        { case: "deeper", rowWidth: "30 in", spots: [spot, spot] },
      ],
    },
    `evidence.counts[1].spots: expected 1 spot, one for each of evidence.counts[0], as spots are paired, found 2; give each spot its neighbor, or leave out spotsPaired`,
  ],
  [
    "a case twice",
    { counts: [counted({}).counts[0], counted({}).counts[0]] },
    `evidence.counts[1].case: expected each case once for each rowPosition, found what evidence.counts[0] counts already; put all its spots into one list`,
  ],
];

describe("bad counts are told in one line", () => {
  test.each(badCounts)("%s", (_name, evidence, ...lines) => expect(read(evidence).lines).toEqual(lines));
  test("a crop without a published kernel weight needs one", () => {
    expect(read(counted({}, {}), "canola", poundsPerAcre).lines).toEqual([
      `${at}.kernelWeight: expected the weight of a thousand kernels such as "35 g", found nothing; give it: no usual weight of canola is published`,
    ]);
  });
});

const strips = (change: object) => ({
  strips: {
    cases: ["normal", "deeper"],
    yields: [
      ["60 bu/ac", "64 bu/ac"],
      ["55 bu/ac", "61 bu/ac"],
    ],
    ...change,
  },
});

describe("strips", () => {
  test("the present shape is valid, and a missing yield is null", () => {
    const { lines, strips: found } = read(
      strips({
        yields: [
          ["60 bu/ac", "64 bu/ac"],
          ["55 bu/ac", null],
          [null, null],
        ],
        detect: "5 bu/ac",
      }),
    );
    expect(lines).toEqual([]);
    expect(found!.chance).toBe(0.8);
    expect(usOfKgPerHa(found!.detectKgPerHa!, corn)).toBeCloseTo(5, 9);
    const answer = answerStrips(found!);
    expect(answer).toMatchObject({
      pairs: 1,
      missing: [
        { pair: 2, lacks: "second" },
        { pair: 3, lacks: "both" },
      ],
      tellsApart: null,
      detect: null,
    });
    expect(answer.difference.why).toBe("one pair");
  });
  const bad: readonly Row[] = [
    [
      "text for a yield",
      strips({ yields: [["sixty", "64 bu/ac"]] }),
      'evidence.strips.yields[0][0]: expected a yield such as "45 bu/ac" or "2800 kg/ha", found "sixty"; start with a number written with a point, such as 1.5',
    ],
    [
      "half a pair",
      strips({ yields: [["60 bu/ac"]] }),
      "evidence.strips.yields[0]: expected a list of 2 in brackets, found a list of 1; give 2 of them",
    ],
    [
      "no pairs",
      strips({ yields: [] }),
      "evidence.strips.yields: expected a list of 1 to 200 in brackets, found an empty list; check how many there are",
    ],
    [
      "a case that is none",
      strips({ cases: ["normal", "deep"] }),
      'evidence.strips.cases[1]: expected the name of a case: "normal", "deeper", found "deep"; did you mean "deeper"?',
    ],
    [
      "one case twice",
      strips({ cases: ["normal", "normal"] }),
      'evidence.strips.cases[1]: expected another case than the first, found "normal"; name the two cases that were compared',
    ],
    [
      "nothing to be seen",
      strips({ detect: "0 bu/ac" }),
      'evidence.strips.detect: expected a yield more than 0, such as "5 bu/ac", found "0 bu/ac"; no number of pairs tells nothing from nothing',
    ],
    [
      "certainty",
      strips({ chance: "100 %" }),
      'evidence.strips.chance: expected 50 to 99 %, found "100 %"; check the number and its unit',
    ],
  ];
  test.each(bad)("%s", (_name, evidence, ...lines) => expect(read(evidence).lines).toEqual(lines));
  test("bushels of a crop that has none", () => {
    expect(read(strips({ yields: [["60 bu/ac", "900 lb/ac"]] }), "sunflower", poundsPerAcre).lines).toEqual([
      'evidence.strips.yields[0][0]: expected a yield such as "45 bu/ac" or "2800 kg/ha", found "60 bu/ac"; this crop is not counted in bushels: write lb/ac or kg/ha',
    ]);
  });
});
