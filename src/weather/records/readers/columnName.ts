import { conversionFrom, type Conversion } from "../units.ts";
import { elements, type Element } from "./element.ts";

/** Names by which people call the elements, without spaces and marks. */
const names: Readonly<Record<Element, string>> = {
  rainMm:
    "rain rainfall precip precipitation precipitationsum prcp pr ppt pcp raintotal totalrain dailyrain totalprecip " +
    "prectot prectotcorr pdailycalc",
  tMaxC:
    "tmax maxt tx maxtemp tempmax maximumtemp maxtemperature temperaturemax maximumtemperature airtempmax maxairtemp " +
    "maxairtemperature hightemp temphigh high tmmx t2mmax temperature2mmax tdailymax airtemperaturemax",
  tMinC:
    "tmin mint tn mintemp tempmin minimumtemp mintemperature temperaturemin minimumtemperature airtempmin minairtemp " +
    "minairtemperature lowtemp templow low tmmn t2mmin temperature2mmin tdailymin airtemperaturemin",
  solarMjPerM2:
    "solar srad rs rad radiation solarrad solarradiation globalradiation solarad shortwave shortwaveradiation " +
    "shortwaveradiationsum insolation allskysfcswdwn solaraddaily",
  rhMaxPercent: "rhmax maxrh rmax humiditymax maxhumidity relativehumiditymax maxrelativehumidity rhdailymax",
  rhMinPercent: "rhmin minrh rmin humiditymin minhumidity relativehumiditymin minrelativehumidity rhdailymin",
  rhMeanPercent:
    "rh rhmean meanrh rhavg avgrh humidity relativehumidity meanhumidity avghumidity rh2m rhdailyavg",
  dewPointC: "dewpoint dew tdew td dewpt dewpointtemperature dewpointtemp meandewpoint t2mdew tdmean",
  wind2mMPerS: "wind windspeed ws u u2 ws2m ws10m wind2m wind10m awnd meanwind avgwind windavg windmean",
  referenceEtMm:
    "eto et0 refet etref referenceet referenceevapotranspiration eto0 etos et0faoevapotranspiration",
};

const elementByName: ReadonlyMap<string, Element> = new Map(
  (Object.entries(names) as [Element, string][]).flatMap(([element, list]) =>
    list.split(" ").map((name) => [name, element] as const),
  ),
);

/** Names that carry the height of the wind, m. */
const heightByName: Readonly<Record<string, number>> = { u2: 2, ws2m: 2, wind2m: 2, ws10m: 10, wind10m: 10 };

/** What a column's name says. */
export interface ColumnName {
  readonly element: Element;
  /** Text of the unit, "" where the name has none. */
  readonly unit: string;
  /** Null where the unit is not known. */
  readonly conversion: Conversion | null;
  /** Height of the wind, m; null where the name has none. */
  readonly heightM: number | null;
}

/** No column of ours has a name this long, letters: it is taken word by word. */
const longestName = 200;

/**
 * Reads names such as `rain_mm`, `Rain (in)`, `tMaxC`, `Tmin °F`, `wind_10m_m/s`. Null for a name that is none of ours
 * or that belongs to a flag beside the figure.
 */
export function readColumnName(text: string): ColumnName | null {
  if (text.length > longestName) return null;
  const words = text
    .replace(/Per(?=[A-Z])/g, "_Per_")
    .replace(/([a-z0-9])([A-Z])/g, "$1_$2")
    .split(/[\s_,:()[\]{}]+|\.(?!\d)/)
    .filter((word) => word !== "");
  for (let taken = words.length; taken > 0; taken--) {
    const name = words.slice(0, taken).join("").toLowerCase().replace(/-/g, "");
    const element = elementByName.get(name);
    if (element === undefined) continue;
    let heightM = heightByName[name] ?? null;
    const rest = words.slice(taken).filter((word) => {
      const height = /^(\d+(?:\.\d+)?)-?m$/i.exec(word);
      if (element !== "wind2mMPerS" || height === null) return word.toLowerCase() !== "at";
      heightM = Number(height[1]);
      return false;
    });
    const unit = rest.join(" ");
    if (/flag|qual|source|attr|note|code|hour|time|count|station|qc/i.test(unit)) return null;
    return { element, unit, conversion: conversionFrom(unit, elements[element].quantity), heightM };
  }
  return null;
}
