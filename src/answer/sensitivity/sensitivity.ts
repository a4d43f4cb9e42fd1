import { matteredFromMm } from "../comparison/compare.ts";
import { stream } from "../../randomness.ts";
import { latinHypercube } from "../../statistics/latinHypercube.ts";
import { varianceShares, type VarianceShare } from "../../statistics/varianceShares.ts";
import { swingShares, type Factor, type FactorName, type FactorRange, type LeftOut } from "./factors.ts";
import { factorsOf } from "./factorsOf.ts";
import type { SensitivityGround } from "./ground.ts";
import { middleSetting, type Setting } from "./setting.ts";
import { answerKinds, settingRuns, type AnswerKind, type SettingRuns } from "./settingRuns.ts";

/** What moves the answer of each pair. */
export interface Sensitivity {
  readonly years: number;
  /** Rows of the sample; 0 where only swings were asked. */
  readonly rows: number;
  /** Seasons run, of one case and year each. */
  readonly seasons: number;
  readonly confidence: number;
  readonly factors: readonly Pick<Factor, "name" | "range">[];
  readonly leftOut: readonly LeftOut[];
  /** Of less than this, mm of water and kg/ha, no one could tell in a field. */
  readonly mattersFrom: { readonly waterMm: number; readonly yieldKgPerHa: number };
  /** The rotation whose years in a row were not run: seasons stand by themselves here. Null where there is none. */
  readonly rotationNotRun: string | null;
  readonly pairs: readonly SensitivityOfPair[];
}

export interface SensitivityOfPair {
  readonly from: string;
  readonly to: string;
  /** Net only where money is told of. */
  readonly answers: readonly SensitivityOfAnswer[];
}

/** SI: mm, kg/ha, money for each hectare. */
export interface SensitivityOfAnswer {
  readonly kind: AnswerKind;
  /** Mean over the years with every factor in its middle. */
  readonly middle: number;
  /** In the years with the least and the most of it, with every factor in its middle. */
  readonly leastYear: number;
  readonly mostYear: number;
  /** Widest first; where equal, in the order of the factors. */
  readonly factors: readonly FactorEffect[];
}

export interface FactorEffect {
  readonly name: FactorName;
  readonly range: FactorRange;
  /** The answer with this factor at the low and high end of its range, all others in their middle. */
  readonly atLow: number;
  readonly atHigh: number;
  /** From the one to the other, >= 0. */
  readonly swing: number;
  /** Null where only swings were asked. */
  readonly share: VarianceShare | null;
}

/** What will be run, before anything is. */
export interface SensitivityPlan {
  readonly ground: SensitivityGround;
  readonly factors: readonly Factor[];
  readonly leftOut: readonly LeftOut[];
  readonly years: number;
  readonly cases: number;
  readonly rows: number;
  readonly seasons: number;
  /** Least seasons that make a sample. */
  readonly leastSeasons: number;
}

/** Fewer rows tell no share from another. Ours. */
const leastRows = 50;
/** More rows only narrow the intervals. Ours. */
const mostRows = 4096;

const resamples = 400;
const confidence = 0.95;

/** @param budget seasons to run at most; null = swings alone */
export function planSensitivity(ground: SensitivityGround, budget: number | null): SensitivityPlan {
  const { factors, leftOut } = factorsOf(ground);
  const moving = factors.filter(({ movesSeasons }) => movesSeasons).length;
  const years = ground.runs.length;
  const cases = ground.preparation.scenario.cases.length;
  const swings = 1 + 2 * moving;
  const ofRow = moving + 2;
  const seasonsFor = (rows: number) => (swings + rows * ofRow) * years * cases;
  const affordable = Math.floor(((budget ?? 0) / (years * cases) - swings) / ofRow);
  const rows = budget === null ? 0 : Math.min(mostRows, Math.max(0, affordable));
  return {
    ground,
    factors,
    leftOut,
    years,
    cases,
    rows: rows < leastRows ? 0 : rows,
    seasons: seasonsFor(rows < leastRows ? 0 : rows),
    leastSeasons: seasonsFor(leastRows),
  };
}

/** Seasons done of those to be run. */
export interface SensitivityProgress {
  readonly done: number;
  readonly total: number;
}

/** Runs the plan setting by setting: whoever asks for the next may stop at any. */
export function* sensitivitySteps(plan: SensitivityPlan): Generator<SensitivityProgress, Sensitivity> {
  const { ground, factors, leftOut, years, rows, seasons: total, cases } = plan;
  const { scenario } = ground.preparation;
  const runs = settingRuns(ground);
  const middle = middleWith(factors, middleSetting(scenario, null));
  let done = 0;
  const after = (settings: number): SensitivityProgress => {
    done += settings * years * cases;
    return { done, total };
  };

  const middleSeasons = runs.seasonsOf(middle);
  const inMiddle = runs.answersOf(middleSeasons, middle);
  const byYear = runs.answersByYear(middleSeasons, middle);
  yield after(1);
  const swings: { low: Float64Array; high: Float64Array }[] = [];
  for (const factor of factors) {
    const at = (share: number) => {
      const setting = factor.set(
        middle,
        Array.from({ length: factor.columns }, () => share),
      );
      return runs.answersOf(factor.movesSeasons ? runs.seasonsOf(setting) : middleSeasons, setting);
    };
    swings.push({ low: at(swingShares.low), high: at(swingShares.high) });
    if (factor.movesSeasons) yield after(2);
  }

  const sampled = rows === 0 ? null : emptySample(rows, inMiddle.length, factors.length);
  if (sampled !== null) {
    const shares = sampleShares(rows, factors, scenario.ensemble.seed);
    for (let row = 0; row < rows; row++) {
      runRow(row, shares, factors, middle, runs, sampled);
      yield after(2 + factors.filter(({ movesSeasons }) => movesSeasons).length);
    }
  }

  const kinds = answerKinds.filter((kind) => kind !== "net" || scenario.money !== null);
  return {
    years,
    rows,
    seasons: total,
    confidence,
    factors: factors.map(({ name, range }) => ({ name, range })),
    leftOut,
    mattersFrom: {
      waterMm: matteredFromMm,
      yieldKgPerHa: matteredFromMm * scenario.yieldLine.slopeKgPerHaPerMm.middle,
    },
    rotationNotRun: scenario.rotation?.said ?? null,
    pairs: scenario.cases.slice(1).map(({ name }, p) => ({
      from: scenario.cases[0].name,
      to: name,
      answers: kinds.map((kind): SensitivityOfAnswer => {
        const column = p * answerKinds.length + answerKinds.indexOf(kind);
        const shareOf =
          sampled === null
            ? null
            : varianceShares(
                {
                  inA: sampled.inA[column]!,
                  inB: sampled.inB[column]!,
                  inAWithB: sampled.inAWithB.map((ofFactor) => ofFactor[column]!),
                },
                {
                  resamples,
                  confidence,
                  draws: stream(scenario.ensemble.seed, "sensitivity bootstrap", p, kind),
                },
              );
        return {
          kind,
          middle: inMiddle[column]!,
          leastYear: Math.min(...byYear.map((year) => year[column]!)),
          mostYear: Math.max(...byYear.map((year) => year[column]!)),
          factors: factors
            .flatMap((factor, i): FactorEffect[] => {
              const range = factor.rangeOfPair(p);
              if (range === null) return [];
              const [atLow, atHigh] = [swings[i]!.low[column]!, swings[i]!.high[column]!];
              const swing = Math.abs(atHigh - atLow);
              return [{ name: factor.name, range, atLow, atHigh, swing, share: shareOf?.[i] ?? null }];
            })
            .sort((a, b) => b.swing - a.swing),
        };
      }),
    })),
  };
}

/** All the steps at once. */
export function sensitivityOf(plan: SensitivityPlan): Sensitivity {
  const steps = sensitivitySteps(plan);
  for (;;) {
    const next = steps.next();
    if (next.done === true) return next.value;
  }
}

function middleWith(factors: readonly Factor[], setting: Setting): Setting {
  return factors.reduce(
    (now, factor) =>
      factor.set(
        now,
        Array.from({ length: factor.columns }, () => 0.5),
      ),
    setting,
  );
}

/** Answers by column, then row; of each factor likewise. */
interface Sampled {
  readonly inA: readonly Float64Array[];
  readonly inB: readonly Float64Array[];
  readonly inAWithB: readonly (readonly Float64Array[])[];
}

function emptySample(rows: number, columns: number, factors: number): Sampled {
  const matrix = () => Array.from({ length: columns }, () => new Float64Array(rows));
  return { inA: matrix(), inB: matrix(), inAWithB: Array.from({ length: factors }, matrix) };
}

/** Shares of each factor in the two matrices: by factor, column, row. */
interface SampleShares {
  readonly a: readonly (readonly Float64Array[])[];
  readonly b: readonly (readonly Float64Array[])[];
}

/** Each factor draws from streams of its own name: one more factor leaves the others' draws as they were. */
function sampleShares(rows: number, factors: readonly Factor[], seed: number): SampleShares {
  const matrix = (which: "A" | "B") =>
    factors.map(({ name, columns }) =>
      latinHypercube(rows, columns, (column) => stream(seed, "sensitivity", which, name, column)),
    );
  return { a: matrix("A"), b: matrix("B") };
}

/** One row of the scheme: its setting in A, in B, and in A with each factor's own shares from B. */
function runRow(
  row: number,
  { a, b }: SampleShares,
  factors: readonly Factor[],
  middle: Setting,
  runs: SettingRuns,
  out: Sampled,
): void {
  const settingOf = (sharesOf: (factor: number) => readonly Float64Array[]) =>
    factors.reduce(
      (now, factor, i) =>
        factor.set(
          now,
          sharesOf(i).map((column) => column[row]!),
        ),
      middle,
    );
  const write = (matrix: readonly Float64Array[], answers: Float64Array) =>
    answers.forEach((answer, column) => (matrix[column]![row] = answer));
  const inA = settingOf((i) => a[i]!);
  const inB = settingOf((i) => b[i]!);
  const seasonsOfA = runs.seasonsOf(inA);
  write(out.inA, runs.answersOf(seasonsOfA, inA));
  write(out.inB, runs.answersOf(runs.seasonsOf(inB), inB));
  factors.forEach(({ movesSeasons }, f) => {
    const mixed = settingOf((i) => (i === f ? b[i]! : a[i]!));
    write(out.inAWithB[f]!, runs.answersOf(movesSeasons ? runs.seasonsOf(mixed) : seasonsOfA, mixed));
  });
}
