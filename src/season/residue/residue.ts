import { totalEvaporableUnderResidue, residueFactorInCrop } from "../evaporation/dualCoefficient.ts";
import type { CurveNumbers, Field, Residue } from "../field.ts";
import { snowCatchUnder } from "../snow.ts";
import { coverOfMass, firstStageUnderResidue, massUnderCover } from "./mulch.ts";
import { halfMonthDays, rainFactor, shareLeft, warmthFactor } from "./residueDecay.ts";
import type { SeasonInput } from "../season.ts";
import type { Today } from "../today.ts";

/** Residue on the first day: in fallow where there is one, else with the crop. */
export function residueAtFirst({ ground, course }: SeasonInput): Residue {
  const inFallow = course.sowingDay > 0 || ground.residueCoverCrop === null;
  const cover = inFallow ? ground.residueCoverFallow : ground.residueCoverCrop!;
  return {
    firstCover: cover,
    cover,
    massTPerHa: massUnderCover(cover),
    days: 0,
    rainMm: 0,
    warmthC: 0,
  };
}

/**
 * Step 0: at the end of every half month the residue is less by what rotted, and what follows from it changes; a cover stated for the
 * crop lies there from sowing on. Writes residue and, in the field, everything that `followResidue` names.
 */
export function rotResidue(today: Today, field: Field): void {
  const { input, residue } = field;
  const { ground, weather, course } = input;
  if (today.day > 0 && today.day === course.sowingDay && ground.residueCoverCrop !== null) {
    residue.cover = ground.residueCoverCrop;
    residue.massTPerHa = massUnderCover(residue.cover);
    beginHalfMonth(residue);
    followResidue(field);
  }
  if (!ground.residueDecays || residue.cover <= 0) return;
  if (residue.days === halfMonthDays) {
    rotHalfMonth(residue, weather.hasTemperature);
    followResidue(field);
  }
  residue.days++;
  residue.rainMm += weather.rainMm[today.index]!;
  residue.warmthC += weather.tMeanC[today.index]!;
}

/** A record without temperatures tells only what rain lets rot. */
function rotHalfMonth(residue: Residue, hasTemperature: boolean): void {
  const rain = rainFactor(residue.rainMm / halfMonthDays);
  const warmth = hasTemperature ? warmthFactor(residue.warmthC / halfMonthDays) : 1;
  residue.massTPerHa *= shareLeft(halfMonthDays, rain, warmth);
  residue.cover = coverOfMass(residue.massTPerHa);
  beginHalfMonth(residue);
}

function beginHalfMonth(residue: Residue): void {
  residue.days = 0;
  residue.rainMm = 0;
  residue.warmthC = 0;
}

/**
 * What follows from the residue that lies there now: the first stage of evaporation, FAO-56's amounts, the snow that stubble catches
 * and the curve number of fallow, the last two in proportion to the ground covered. The curve number of the crop does not: its
 * table only asks whether residue lies on 5 and on 20 % of the ground.
 */
export function followResidue(field: Field): void {
  const { residue, totalEvaporableMm, readilyEvaporableMm } = field;
  const { ground } = field.input;
  const { cover, firstCover } = residue;
  field.firstStageShare = firstStageUnderResidue(cover);
  field.cropResidueFactor = residueFactorInCrop(cover);
  totalEvaporableMm.fallow = totalEvaporableUnderResidue(totalEvaporableMm.crop, cover);
  readilyEvaporableMm.fallow = Math.min(readilyEvaporableMm.crop, totalEvaporableMm.fallow);
  field.snowCatchShare = snowCatchUnder(cover, ground);
  // More than on the first day can only lie in a crop, where this number no longer counts.
  const ofFirst = cover < firstCover ? cover / firstCover : 1;
  curveNumbersBetween(
    field.curveNumbers.bareFallow,
    field.curveNumbers.firstFallow,
    ofFirst,
    field.curveNumbers.fallow,
  );
}

const between = (bare: number, first: number, share: number): number => bare + share * (first - bare);

function curveNumbersBetween(
  bare: Readonly<CurveNumbers>,
  first: Readonly<CurveNumbers>,
  share: number,
  out: CurveNumbers,
): void {
  out.dry = between(bare.dry, first.dry, share);
  out.average = between(bare.average, first.average, share);
  out.wet = between(bare.wet, first.wet, share);
}
