import table from "../../../data-reference/crop-coefficients.json";
import {
  climateAdjusted,
  climateTerm,
  coefficientAt,
  upperCoefficient,
} from "../../../src/crop/basalCoefficient.ts";
import type { StageLengths } from "../../../src/crop/stages.ts";
import { kcbOfLeafArea, standShareOf, type PlantHabit } from "../../../src/crop/thinStand.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf } from "../weather/records.ts";

type Row = readonly (number | string)[];

const { take, noneLeft } = recordsOf(table.records);

function check(id: string, ours: (...inputs: never[]) => number): void {
  const record = take<Row[], number[]>(id);
  const rows = record.inputs.map((row, i) => [...row, record.expected[i]!]);
  published(`FAO-56, ${record.locator}: ${record.what}`, closenessOf(record), rows, ours);
}

const beans: StageLengths = [25, 25, 30, 20];

const inClimate = (k: number, wind: number, rhMin: number, heightMm: number): number =>
  climateAdjusted(k, wind, rhMin, heightMm);
check("fao56-ex27", inClimate);
check("fao56-box14", inClimate);
check("fao56-box15", inClimate);
check("fao56-ex29", inClimate);
check("fao56-eq65-rule", inClimate);
check("fao56-ex40-42", inClimate);

const ofBeans = (day: number, kInitial: number, kMid: number, kEnd: number): number =>
  coefficientAt(day, beans, kInitial, kMid, kEnd);
check("fao56-ex28", ofBeans);
check("fao56-ex30", ofBeans);
check("fao56-fig36", ofBeans);

const upperInClimate = (kcb: number, wind: number, rhMin: number, heightMm: number): number =>
  upperCoefficient(kcb, climateTerm(wind, rhMin, heightMm));
check("fao56-ex32-kcmax", upperInClimate);
check("fao56-ex31-kcmax", upperInClimate);

check("fao56-eq97", kcbOfLeafArea);
check("fao56-box17", (dense: number, share: number, habit: PlantHabit) => dense * standShareOf(share, habit));

noneLeft();
