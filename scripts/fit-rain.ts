/**
 * `npx tsx scripts/fit-rain.ts`: fits what the rain generator takes from open gauges (../shared/data, listed in
 * data-reference/rain-gauges.json) and prints it, with each gauge left out in turn, as data-reference/rain-generator.json
 * holds it; `--gauges` prints the gauges' own normals and figures, as data-reference/rain-gauges.json holds them.
 *
 * No gauge counts for more than 25 years, so that a long record does not outweigh the others.
 */
import { gaugeNormals, gaugeRecord, gauges, spanOf } from "../tests/support/openGauges.ts";
import { monthOf } from "../src/quantity/calendar.ts";
import {
  amountShape,
  relativeVariance,
  shapeFrom,
  shareAboveTimes,
} from "../src/weather/generate/rainAmounts.ts";
import type { AmountShape } from "../src/weather/generate/rainAmounts.ts";
import { wetFromMm } from "../src/weather/generate/rainChain.ts";
import { rainCharacter } from "../src/weather/generate/rainCharacter.ts";
import { warmRainIndex } from "../src/weather/generate/rainTiming.ts";
import type { MonthlyNormals } from "../src/weather/records/record.ts";

const mostYears = 25;
/** Storm sizes at which the shares of the rain are matched, times the mean excess of a wet day. */
const sizes = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 8];
const coldBelowC = 10;

interface Measured {
  readonly id: string;
  readonly years: number;
  readonly normals: MonthlyNormals;
  readonly index: number;
  /** Lag-one correlation of wet and dry about the months' own wet share. */
  readonly persistence: number;
  /** Excess of wet days over the mean excess of their month. */
  readonly cold: readonly number[];
  readonly warm: readonly number[];
  readonly character: ReturnType<typeof rainCharacter>;
  readonly months: readonly MonthRain[];
}

interface MonthRain {
  readonly month: number;
  readonly days: number;
  readonly wetShare: number;
  readonly meanMm: number;
  readonly meanC: number;
}

const all = gauges.map((gauge): Measured => {
  const record = gaugeRecord(gauge);
  const normals = gaugeNormals(record);
  const meanC = (month: number) => (normals.tMaxC[month]! + normals.tMinC[month]!) / 2;
  const { rainMm, firstDay } = record;
  const byMonth = Array.from({ length: 12 }, () => [] as number[]);
  const measuredDays = Array<number>(12).fill(0);
  for (const [day, mm] of rainMm.entries()) {
    if (Number.isNaN(mm)) continue;
    const month = monthOf(firstDay + day) - 1;
    measuredDays[month]!++;
    if (mm >= wetFromMm) byMonth[month]!.push(mm - wetFromMm);
  }
  /** Excess and wet share by the month itself, or, below 20 wet days, by it and as many months about it as bring them. */
  const about = (month: number) => {
    let [wet, days]: [number[], number] = [[], 0];
    for (let reach = 0; reach <= 5 && wet.length < 20; reach++) {
      const near = Array.from({ length: 2 * reach + 1 }, (_, at) => (month - reach + at + 12) % 12);
      wet = near.flatMap((one) => byMonth[one]!);
      days = near.reduce((sum, one) => sum + measuredDays[one]!, 0);
    }
    return { meanExcess: wet.reduce((sum, mm) => sum + mm, 0) / wet.length, wetShare: wet.length / days };
  };
  const pooled = byMonth.map((_, month) => about(month));
  const scaled = (which: (celsius: number) => boolean) =>
    byMonth.flatMap((wet, month) =>
      which(meanC(month)) ? wet.map((mm) => mm / pooled[month]!.meanExcess) : [],
    );
  let [together, alone] = [0, 0];
  for (let day = 1; day < rainMm.length; day++) {
    const [yesterday, today] = [rainMm[day - 1]!, rainMm[day]!];
    if (Number.isNaN(yesterday) || Number.isNaN(today)) continue;
    const f = pooled[monthOf(firstDay + day) - 1]!.wetShare;
    together += (Number(today >= wetFromMm) - f) * (Number(yesterday >= wetFromMm) - f);
    alone += f * (1 - f);
  }
  const months = byMonth.flatMap((wet, month) => {
    const days = measuredDays[month]!;
    if (wet.length === 0) return [];
    const mean = wet.reduce((sum, mm) => sum + mm, 0) / wet.length + wetFromMm;
    return [{ month, days, wetShare: wet.length / days, meanMm: mean, meanC: meanC(month) }];
  });
  return {
    id: gauge.id,
    years: measuredDays.reduce((sum, days) => sum + days, 0) / 365.25,
    normals,
    index: warmRainIndex(normals),
    persistence: together / alone,
    cold: scaled((celsius) => celsius < coldBelowC),
    warm: scaled((celsius) => celsius >= coldBelowC),
    character: rainCharacter(record, [20, 30], spanOf(gauge)),
    months,
  };
});

const weightOf = ({ years }: Measured) => Math.min(mostYears, years);

/** Mixed exponential whose shares of the rain by storm size come nearest to the gauges' (least squares over a grid of 0.01). */
function fitShape(from: readonly Measured[], season: "cold" | "warm"): AmountShape {
  const wanted = sizes.map((size) => {
    let [share, weight] = [0, 0];
    for (const gauge of from) {
      const excess = gauge[season];
      const sum = excess.reduce((total, one) => total + one, 0);
      if (!(sum > 0)) continue;
      // A gauge weighs by its years, and by how many of its wet days are of this season.
      const w = (weightOf(gauge) * excess.length) / (gauge.cold.length + gauge.warm.length);
      share += (w * excess.reduce((total, one) => total + (one > size ? one : 0), 0)) / sum;
      weight += w;
    }
    return share / weight;
  });
  let best = { shape: shapeFrom(0.5, 1), misfit: Infinity };
  for (let share = 5; share <= 90; share++) {
    for (let times = 2; times < 100; times++) {
      const shape = shapeFrom(share / 100, times / 100);
      const misfit = sizes.reduce(
        (sum, size, at) => sum + (shareAboveTimes(shape, size) - wanted[at]!) ** 2,
        0,
      );
      if (misfit < best.misfit) best = { shape, misfit };
    }
  }
  return best.shape;
}

/** Weighted least squares: value = a + b x. */
function line(rows: readonly { readonly x: number; readonly y: number; readonly weight: number }[]) {
  const w = rows.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (row: (typeof rows)[number]) => number) =>
    rows.reduce((sum, row) => sum + row.weight * of(row), 0) / w;
  const [mx, my] = [mean(({ x }) => x), mean(({ y }) => y)];
  const b = mean(({ x, y }) => (x - mx) * (y - my)) / mean(({ x }) => (x - mx) ** 2);
  return { a: my - b * mx, b };
}

function fitPersistence(from: readonly Measured[]) {
  return line(from.map((gauge) => ({ x: gauge.index, y: gauge.persistence, weight: weightOf(gauge) })));
}

/** What a chain leaves of the variance of years: its own is f v + f (1 - f) m^2 (1 + r) / (1 - r) a day [Gabriel 1959; Katz 1977] (memory). */
function squareOfWetness(gauge: Measured, r: number, shapes: (celsius: number) => AmountShape): number {
  let [chain, answering] = [0, 0];
  for (const { month, wetShare: f, meanMm, meanC } of gauge.months) {
    const days = new Date(Date.UTC(2001, month + 1, 0)).getUTCDate();
    const variance = relativeVariance(shapes(meanC)) * (meanMm - wetFromMm) ** 2;
    chain += days * (f * variance + (f * (1 - f) * meanMm ** 2 * (1 + r)) / (1 - r));
    answering += days * f * (1 - f) * meanMm;
  }
  return (gauge.character.yearlySdMm! ** 2 - chain) / answering ** 2;
}

function fit(from: readonly Measured[]) {
  const cold = fitShape(from, "cold");
  const warm = fitShape(from, "warm");
  const persistence = fitPersistence(from);
  const long = from.filter(({ character }) => character.wholeYears >= 8);
  const wetness = line(
    long.map((gauge) => ({
      x: gauge.index,
      y: squareOfWetness(gauge, persistence.a + persistence.b * gauge.index, amountShape),
      weight: Math.min(mostYears, gauge.character.wholeYears),
    })),
  );
  return { cold, warm, persistence, wetness };
}

/** (a + b T) (P / 30)^c through the logarithms, over a grid: months with at least four wet days measured. */
function fitRainPerWetDay(from: readonly Measured[]) {
  const rows = from.flatMap((gauge) =>
    gauge.months
      .filter(({ days, wetShare }) => days * wetShare >= 4)
      .map((month) => ({ ...month, weight: weightOf(gauge), rainMm: gauge.normals.rainMm[month.month]! })),
  );
  let best = { a: 0, b: 0, c: 0, misfit: Infinity };
  for (let a = 2; a <= 6; a += 0.1) {
    for (let b = 0; b <= 0.3; b += 0.01) {
      for (let c = 0; c <= 0.8; c += 0.02) {
        let misfit = 0;
        for (const { weight, meanMm, meanC, rainMm } of rows)
          misfit += weight * Math.log((Math.max(1.5, a + b * meanC) * (rainMm / 30) ** c) / meanMm) ** 2;
        if (misfit < best.misfit) best = { a, b, c, misfit };
      }
    }
  }
  const weights = rows.reduce((sum, { weight }) => sum + weight, 0);
  return { ...best, rmsOfLogarithm: Math.sqrt(best.misfit / weights) };
}

/** Share of a gauge's rain on days above an amount, by a shape and the gauge's own months. */
function shareAbove(
  { months }: Measured,
  { cold, warm }: { cold: AmountShape; warm: AmountShape },
  mm: number,
) {
  let [above, total] = [0, 0];
  for (const { days, wetShare, meanMm, meanC } of months) {
    const [excess, warmth] = [meanMm - wetFromMm, Math.min(1, Math.max(0, (meanC - 5) / 10))];
    const between = (of: "smallShare" | "smallTimes") => cold[of] + warmth * (warm[of] - cold[of]);
    const shape = shapeFrom(between("smallShare"), between("smallTimes"));
    const times = (mm - wetFromMm) / excess;
    const daysAbove =
      shape.smallShare * Math.exp(-times / shape.smallTimes) +
      (1 - shape.smallShare) * Math.exp(-times / shape.largeTimes);
    above += days * wetShare * (excess * shareAboveTimes(shape, times) + wetFromMm * daysAbove);
    total += days * wetShare * meanMm;
  }
  return above / total;
}

const say = (label: string, { cold, warm, persistence, wetness }: ReturnType<typeof fit>) =>
  console.log(
    `${label}: cold ${cold.smallShare} ${cold.smallTimes} ${cold.largeTimes.toFixed(2)}; warm ${warm.smallShare} ${warm.smallTimes} ${warm.largeTimes.toFixed(2)}; ` +
      `persistence ${persistence.a.toFixed(3)} ${persistence.b.toFixed(3)}; wetness^2 ${wetness.a.toFixed(4)} ${wetness.b.toFixed(4)}`,
  );

if (process.argv.includes("--gauges")) {
  const round = (values: readonly number[], digits: number) =>
    values.map((one) => Number(one.toFixed(digits)));
  const filled = gauges.map((gauge, at) => {
    const { normals, character } = all[at]!;
    return {
      ...gauge,
      measured: {
        wholeYears: character.wholeYears,
        rainMm: Number(character.rainMm.toFixed(1)),
        wetDays: Number(character.wetDays.toFixed(1)),
        longestDrySpellDays: Number(character.longestDrySpellDays.toFixed(1)),
        yearlySdMm: character.yearlySdMm === null ? null : Number(character.yearlySdMm.toFixed(1)),
        shareAbove20mm: Number(character.shareAbove[0]!.toFixed(3)),
        shareAbove30mm: Number(character.shareAbove[1]!.toFixed(3)),
      },
      normals: {
        rainMm: round(normals.rainMm, 2),
        wetDays: round(normals.wetDays!, 2),
        tMaxC: round(normals.tMaxC, 1),
        tMinC: round(normals.tMinC, 1),
      },
    };
  });
  console.log(JSON.stringify(filled));
} else {
  for (const gauge of all) {
    const { id, index, persistence, character, cold, warm, years } = gauge;
    const square =
      character.wholeYears >= 8
        ? squareOfWetness(
            gauge,
            fit(all).persistence.a + fit(all).persistence.b * index,
            amountShape,
          ).toFixed(4)
        : "-";
    console.log(
      `${id}: years ${years.toFixed(1)}, index ${index.toFixed(2)}, persistence ${persistence.toFixed(3)}, wetness^2 ${square}, wet days ${cold.length} cold ${warm.length} warm`,
    );
  }
  say("all gauges", fit(all));
  for (const gauge of all) {
    const others = fit(all.filter((one) => one !== gauge));
    say(`without ${gauge.id}`, others);
    const { a, b } = others.persistence;
    const square = others.wetness.a + others.wetness.b * gauge.index;
    console.log(
      `  ${gauge.id} by the others: persistence ${gauge.persistence.toFixed(3)} measured, ${(a + b * gauge.index).toFixed(3)}; ` +
        `wetness^2 ${square.toFixed(4)}; share of the rain ${[20, 30].map((mm, at) => `above ${mm} mm ${gauge.character.shareAbove[at]!.toFixed(3)} measured, ${shareAbove(gauge, others, mm).toFixed(3)}`).join(", ")}`,
    );
  }
  console.log("rain of a wet day", fitRainPerWetDay(all));
}
