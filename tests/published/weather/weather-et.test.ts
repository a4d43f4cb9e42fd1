/**
 * FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes and Smith 1998): its tables and worked examples of
 * weather and reference ET, equation by equation. Rows, sources and tolerances: data-reference/fao56-weather.json.
 */
import tables from "../../../data-reference/fao56-weather.json" with { type: "json" };
import { airPressureKPa, psychrometricKPaPerC } from "../../../src/weather/et/atmosphere.ts";
import { hargreavesMm } from "../../../src/weather/et/hargreaves.ts";
import {
  dewPointFromMinimumC,
  lowestHumidityPercent,
  meanSaturationKPa,
  saturationKPa,
  saturationSlopeKPaPerC,
  vapourFromBothKPa,
  vapourFromDewPointKPa,
  vapourFromHighestKPa,
  vapourFromMeanKPa,
} from "../../../src/weather/et/humidity.ts";
import {
  blackBodyMj,
  clearSkyMj,
  netLongwaveMj,
  netShortwaveMj,
  solarFromSunshineMj,
  solarFromTemperaturesMj,
  solarPerRootRange,
} from "../../../src/weather/et/radiation.ts";
import { penmanMonteithMm } from "../../../src/weather/et/referenceEt.ts";
import {
  daylightHours,
  declinationRad,
  extraterrestrialMj,
  inverseDistance,
  sunsetHourAngleRad,
} from "../../../src/weather/et/sun.ts";
import { leastWindMPerS, usualWindMPerS, windAt2mMPerS } from "../../../src/weather/et/wind.ts";
import { tablesOf } from "./weather-tables.ts";

const { check, noneLeft } = tablesOf(tables);

check("fao56-pressure", airPressureKPa);
check("fao56-psychrometric", (elevationM: number) => psychrometricKPaPerC(airPressureKPa(elevationM)));

check("fao56-saturation", saturationKPa);
check("fao56-saturation-mean", meanSaturationKPa);
check("fao56-slope", saturationSlopeKPaPerC);
check("fao56-vapour-both", vapourFromBothKPa);
check("fao56-vapour-highest", vapourFromHighestKPa);
check("fao56-vapour-mean", vapourFromMeanKPa);
check("fao56-vapour-dew-point", vapourFromDewPointKPa);
check(
  "fao56-deficit",
  (tMaxC: number, tMinC: number, rhMax: number, rhMin: number) =>
    meanSaturationKPa(tMaxC, tMinC) - vapourFromBothKPa(tMaxC, tMinC, rhMax, rhMin),
);
check("fao56-dew-point-missing", (tMinC: number, dry: number) => dewPointFromMinimumC(tMinC, dry === 1));
check("fao56-lowest-humidity", (tMaxC: number, tMinC: number) =>
  lowestHumidityPercent(vapourFromDewPointKPa(tMinC), tMaxC),
);

check("fao56-inverse-distance", inverseDistance);
check("fao56-declination", declinationRad);
check("fao56-sunset-angle", sunsetHourAngleRad);
check("fao56-ra", extraterrestrialMj);
check("fao56-table-2.6", extraterrestrialMj);
check("fao56-daylight", daylightHours);
check("fao56-table-2.7", daylightHours);

check("fao56-solar-sunshine", (latitudeDeg: number, dayOfYear: number, sunshineHours: number) =>
  solarFromSunshineMj(
    extraterrestrialMj(latitudeDeg, dayOfYear),
    sunshineHours,
    daylightHours(latitudeDeg, dayOfYear),
  ),
);
check("fao56-clear-sky", clearSkyMj);
check("solar-per-root-range", (setting: "inland" | "coastal") => solarPerRootRange[setting]);
check("fao56-solar-temperature", solarFromRange);
check("fao56-black-body", blackBodyMj);
check("fao56-net-longwave", netLongwaveMj);
check("fao56-net-shortwave", netShortwaveMj);
check(
  "fao56-net-radiation",
  (tMaxC: number, tMinC: number, vapourKPa: number, solarMj: number, clearMj: number) =>
    netShortwaveMj(solarMj) - netLongwaveMj(tMaxC, tMinC, vapourKPa, solarMj, clearMj),
);

check("usual-wind", (which: "usual" | "least") => ({ usual: usualWindMPerS, least: leastWindMPerS })[which]);
check("fao56-wind-factor", (heightM: number) => windAt2mMPerS(1, heightM));
check("fao56-wind", windAt2mMPerS);

check(
  "fao56-bangkok",
  (
    _site: string,
    latitudeDeg: number,
    elevationM: number,
    dayOfYear: number,
    tMaxC: number,
    tMinC: number,
    vapourKPa: number,
    wind2mMPerS: number,
    sunshineHours: number,
    soilHeatMj: number,
  ) => {
    const ra = extraterrestrialMj(latitudeDeg, dayOfYear);
    const solar = solarFromSunshineMj(ra, sunshineHours, daylightHours(latitudeDeg, dayOfYear));
    const clear = clearSkyMj(ra, elevationM);
    return referenceEtMm({ tMaxC, tMinC, vapourKPa, solar, clear, elevationM, wind2mMPerS, soilHeatMj });
  },
);
check(
  "fao56-uccle",
  (
    _site: string,
    latitudeDeg: number,
    elevationM: number,
    dayOfYear: number,
    tMaxC: number,
    tMinC: number,
    rhMaxPercent: number,
    rhMinPercent: number,
    wind10mMPerS: number,
    sunshineHours: number,
  ) => {
    const ra = extraterrestrialMj(latitudeDeg, dayOfYear);
    const solar = solarFromSunshineMj(ra, sunshineHours, daylightHours(latitudeDeg, dayOfYear));
    const clear = clearSkyMj(ra, elevationM);
    const vapourKPa = vapourFromBothKPa(tMaxC, tMinC, rhMaxPercent, rhMinPercent);
    const wind2mMPerS = windAt2mMPerS(wind10mMPerS, 10);
    return referenceEtMm({ tMaxC, tMinC, vapourKPa, solar, clear, elevationM, wind2mMPerS, soilHeatMj: 0 });
  },
);
check(
  "fao56-lyon",
  (
    _site: string,
    latitudeDeg: number,
    elevationM: number,
    dayOfYear: number,
    tMaxC: number,
    tMinC: number,
    wind2mMPerS: number,
  ) => {
    const clear = clearSkyMj(extraterrestrialMj(latitudeDeg, dayOfYear), elevationM);
    const solar = solarFromRange(latitudeDeg, dayOfYear, elevationM, tMaxC, tMinC, "inland");
    const vapourKPa = vapourFromDewPointKPa(dewPointFromMinimumC(tMinC, false));
    return referenceEtMm({ tMaxC, tMinC, vapourKPa, solar, clear, elevationM, wind2mMPerS, soilHeatMj: 0 });
  },
);
check(
  "grass-fallon-2015-07-01",
  (
    elevationM: number,
    tMaxC: number,
    tMinC: number,
    vapourKPa: number,
    solar: number,
    clear: number,
    windMPerS: number,
    heightM: number,
  ) => {
    const wind2mMPerS = windAt2mMPerS(windMPerS, heightM);
    return referenceEtMm({ tMaxC, tMinC, vapourKPa, solar, clear, elevationM, wind2mMPerS, soilHeatMj: 0 });
  },
);

check("fao56-hargreaves", (latitudeDeg: number, dayOfYear: number, tMaxC: number, tMinC: number) =>
  hargreavesMm((tMaxC + tMinC) / 2, tMaxC - tMinC, extraterrestrialMj(latitudeDeg, dayOfYear)),
);
check("hargreaves-mehta2006", hargreavesMm);

noneLeft();

function solarFromRange(
  latitudeDeg: number,
  dayOfYear: number,
  elevationM: number,
  tMaxC: number,
  tMinC: number,
  setting: "inland" | "coastal",
): number {
  const ra = extraterrestrialMj(latitudeDeg, dayOfYear);
  return solarFromTemperaturesMj({
    tMaxC,
    tMinC,
    extraterrestrialMj: ra,
    clearSkyMj: clearSkyMj(ra, elevationM),
    perRootRange: solarPerRootRange[setting],
  });
}

/** The examples' chain from solar radiation to reference ET. */
function referenceEtMm(day: {
  tMaxC: number;
  tMinC: number;
  vapourKPa: number;
  solar: number;
  clear: number;
  elevationM: number;
  wind2mMPerS: number;
  soilHeatMj: number;
}): number {
  const longwave = netLongwaveMj(day.tMaxC, day.tMinC, day.vapourKPa, day.solar, day.clear);
  return penmanMonteithMm({
    tMaxC: day.tMaxC,
    tMinC: day.tMinC,
    tMeanC: (day.tMaxC + day.tMinC) / 2,
    vapourKPa: day.vapourKPa,
    netRadiationMj: netShortwaveMj(day.solar) - longwave,
    soilHeatMj: day.soilHeatMj,
    wind2mMPerS: day.wind2mMPerS,
    psychrometricKPaPerC: psychrometricKPaPerC(airPressureKPa(day.elevationM)),
  });
}
