/**
 * `npm run bench`: season runs a second on one core, for 72 slices.
 * A run is one case of one weather year: 400 days, of which 140 are season, invented weather, drainage where the soil is wet.
 * Speed is quoted as a ratio too, against a plain loop over the same days and slices in the same process: a figure that moves
 * less between machines than runs a second do.
 */
import { Bench } from "tinybench";
import { makeLedger } from "../src/season/ledger.ts";
import { makeWorkspace, simulate } from "../src/season/simulate.ts";
import { column, testCourse, testInput, testSilt, testWeather, waterAt } from "../tests/support/column.ts";

const days = 400;
const slices = column([{ ...testSilt, thicknessMm: 1800 }]);
/** A shower every `every` days; the same invented years each time. */
const input = (every: number, rainMm: number) =>
  testInput({
    slices,
    startWaterMm: waterAt(slices, 0.5),
    weather: testWeather(days, (d) => ({
      rainMm: d % every === 0 ? rainMm : 0,
      et0Mm: 4 + 3 * Math.sin(d / 58),
    })),
    course: testCourse(days, 260),
  });
const dry = input(7, 6);
const wet = input(4, 14);
const ledger = makeLedger(days);
const workspace = makeWorkspace(slices.count);

const bench = new Bench({ time: 1500, warmupTime: 300 });
const names = {
  dry: `season run, ${slices.count} slices, ${days} days, ${Math.round((days / 7) * 6)} mm of rain`,
  wet: `season run, ${slices.count} slices, ${days} days, ${Math.round((days / 4) * 14)} mm of rain`,
  plain: `plain loop: one addition for each of ${days} x ${slices.count} slice-days`,
};
bench.add(names.dry, () => void simulate(dry, ledger, workspace));
bench.add(names.wet, () => void simulate(wet, ledger, workspace));
bench.add(names.plain, () => {
  const { waterMmBySlice } = workspace;
  for (let d = 0; d < days; d++) {
    let sum = 0;
    for (let j = 0; j < slices.count; j++) sum += waterMmBySlice[j]!;
    ledger.storageMm[d] = sum;
  }
});
await bench.run();

const medianMs = (name: string) => {
  const { result } = bench.getTask(name)!;
  return result && "latency" in result ? result.latency.p50 : Number.NaN;
};
const plainMs = medianMs(names.plain);
for (const name of [names.dry, names.wet]) {
  const ms = medianMs(name);
  console.log(`${name}: ${Math.round(1000 / ms)} runs/s, ${(ms / plainMs).toFixed(1)} times the plain loop`);
}

// The day makes no object, array or closure. What the heap still gives is numbers boxed where one function hands them to
// another: some bytes a day, none a slice.
const heapOf = (run: () => void) => {
  for (let i = 0; i < 500; i++) run();
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < 200; i++) run();
  return (process.memoryUsage().heapUsed - before) / 200;
};
const half = { ...wet, course: testCourse(days / 2, 130) };
const thick = column([{ ...testSilt, thicknessMm: 1800 }], 50);
const coarse = { ...wet, slices: thick, startWaterMm: waterAt(thick, 0.5) };
const [shortBytes, longBytes, coarseBytes] = [half, wet, coarse].map((run) =>
  heapOf(() => void simulate(run, ledger, workspace)),
) as [number, number, number];
console.log(
  `heap taken: ${Math.round((longBytes - shortBytes) / (days / 2))} bytes a day with ${slices.count} slices, ` +
    `${Math.round((coarseBytes - shortBytes) / (days / 2))} with ${thick.count}`,
);
