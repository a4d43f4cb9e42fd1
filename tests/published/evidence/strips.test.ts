import checks from "../../../data-reference/strips-checks.json";
import { pairedDifference, pooledDifference } from "../../../src/statistics/differenceOfMeans.ts";
import { replicatesByNormal, valuesForReach } from "../../../src/statistics/howMany.ts";
import { estimateOf, tellsApart } from "../../../src/statistics/interval.ts";
import { spreadOf } from "../../../src/statistics/spread.ts";
import { answerStrips, trustOf } from "../../../src/evidence/strips.ts";
import { twoSidedT } from "../../../src/statistics/studentT.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf } from "../weather/records.ts";

type Row = readonly (number | string)[];
const { take, noneLeft } = recordsOf(checks.records);

function check(id: string, ours: (...inputs: never[]) => number): void {
  const record = take<Row[], number[]>(id);
  const rows = record.inputs.map((row, i) => [...row, record.expected[i]!]);
  published(`${sourceOf(record)}: ${record.what}`, closenessOf(record), rows, ours);
}

check("ST-11", twoSidedT);
check("ST-08-t", twoSidedT);

// The source prints means and variances; two values with mean m and variance v lie at m -+ sqrt(v / 2).
const twoWith = (mean: number, variance: number) => [
  mean - Math.sqrt(variance / 2),
  mean + Math.sqrt(variance / 2),
];
const unpaired = pooledDifference(twoWith(4.1, 0.08), twoWith(6.15, 0.405), 0.95);
check("ST-08", (what: "standardError" | "t" | "freedom") => unpaired[what]!);
check("ST-09", (a: number, b: number) => spreadOf([a, b]).sd! ** 2);

function checkPairs(id: string, differences: readonly number[]): void {
  const pairs = differences.map((more, p) => [40 + p, 40 + p + more] as const);
  const paired = pairedDifference(pairs, 0.95);
  const { leastSignificantKgPerHa, differenceSdKgPerHa } = answerStrips({
    caseIndexes: [0, 1],
    year: null,
    pairs,
    confidence: 0.95,
    detectKgPerHa: null,
    chance: 0.8,
  });
  check(id, (what: "value" | "sd" | "standardError" | "t" | "lsd") => {
    if (what === "lsd") return leastSignificantKgPerHa!;
    return what === "sd" ? differenceSdKgPerHa! : paired[what]!;
  });
}
checkPairs("ST-10", [3.1, 1.8, 4.0, 2.2, 0.6, 3.3]);
checkPairs("stat-paired-test", [2.1, 4.0, 1.2, 3.1, 0.9, 3.7]);

check("ST-12", valuesForReach);
check("ST-13", replicatesByNormal);
// An interval that reaches one LSD to either side of the difference.
check("ST-15", (a: number, b: number, lsd: number) => {
  const standardError = lsd / twoSidedT(0.95, 5);
  return tellsApart(estimateOf(a - b, standardError, 5, 0.95)) === true ? 1 : 0;
});
check("ST-06", (judged: string, variation: number) => (trustOf(variation) === judged ? 1 : 0));

noneLeft();
