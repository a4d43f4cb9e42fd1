import checks from "../../../data-reference/yield-checks.json";
import {
  bushelsPerAcre,
  kgPerHaOfUs,
  poundsPerAcre,
  slopeOfUsPerInch,
  usOfKgPerHa,
  usPerInchOfSlope,
  yieldKgPerHa,
} from "../../../src/crop/yield/yieldLine.ts";
import { yieldLineFor } from "../../../src/crop/yield/yieldLines.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf } from "../weather/records.ts";

type Row = readonly (number | string)[];
const { take, noneLeft } = recordsOf([...checks.lines, ...checks.units]);

function check(id: string, ours: (...inputs: never[]) => number): void {
  const record = take<Row[], number[]>(id);
  const rows = record.inputs.map((row, i) => [...row, record.expected[i]!]);
  published(`${sourceOf(record)}: ${record.what}`, closenessOf(record), rows, ours);
}

function yieldAt(crop: string, choice: string, waterUseMm: number): number {
  const line = yieldLineFor(crop, choice);
  return yieldKgPerHa(line, line.slopeKgPerHaPerMm.middle, waterUseMm);
}
const yieldUsAt = (crop: string, choice: string, waterUseIn: number): number =>
  usOfKgPerHa(yieldAt(crop, choice, waterUseIn * 25.4), yieldLineFor(crop, choice).unit);

check("yield-lines-worked", yieldUsAt);
check("yield-bushland", yieldAt);
check("yield-bushland-sorghum", yieldAt);
check("yield-canola", yieldUsAt);
// Its line is in bushels; the plots were in pounds.
check("yield-akron-2002", (crop: string, choice: string, waterUseIn: number) =>
  usOfKgPerHa(yieldAt(crop, choice, waterUseIn * 25.4), poundsPerAcre),
);

check("yield-us-to-kg", (lbPerBushel: number) => kgPerHaOfUs(1, bushelsPerAcre(lbPerBushel)));
check("yield-slope-56-60", (lbPerBushel: number) => slopeOfUsPerInch(1, bushelsPerAcre(lbPerBushel)));
check("yield-lb", (lb: number) => kgPerHaOfUs(lb, poundsPerAcre));
check("yield-slopes-si", (slope: number, lb: number) =>
  slopeOfUsPerInch(slope, lb === 1 ? poundsPerAcre : bushelsPerAcre(lb)),
);
check("yield-stored-inch", (slope: number, lbPerBushel: number) =>
  usPerInchOfSlope(slope, bushelsPerAcre(lbPerBushel)),
);

noneLeft();
