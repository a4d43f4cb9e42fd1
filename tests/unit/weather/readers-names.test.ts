import { describe, expect, test } from "vitest";
import { readColumnName } from "../../../src/weather/records/readers/columnName.ts";
import { conversionFrom, type Quantity } from "../../../src/weather/records/units.ts";

/** One of the file's unit in ours. Exact by definition of the units, but for the calorie, which is the thermochemical. */
const units: readonly (readonly [Quantity, string, at: number, ours: number])[] = [
  ["depth", "mm", 3, 3],
  ["depth", "mm/day", 3, 3],
  ["depth", "millimetres", 3, 3],
  ["depth", "kg m-2", 3, 3],
  ["depth", "cm", 3, 30],
  ["depth", "in", 1, 25.4],
  ["depth", "Inches", 2, 50.8],
  ["depth", "0.1 mm", 254, 25.4],
  ["depth", "tenths of mm", 254, 25.4],
  ["temperature", "C", 20, 20],
  ["temperature", "°C", 20, 20],
  ["temperature", "\ufffdC", 20, 20],
  ["temperature", "deg C", 20, 20],
  ["temperature", "degC", 20, 20],
  ["temperature", "degrees Celsius", 20, 20],
  ["temperature", "F", 212, 100],
  ["temperature", "°F", -40, -40],
  ["temperature", "Fahrenheit", 32, 0],
  ["temperature", "K", 273.15, 0],
  ["solar", "MJ/m2", 20, 20],
  ["solar", "MJ/m^2/day", 20, 20],
  ["solar", "MJ m-2 d-1", 20, 20],
  ["solar", "MJm-2", 20, 20],
  ["solar", "W/m²", 100, 8.64],
  ["solar", "W m-2", 100, 8.64],
  ["solar", "kJ/m2", 20000, 20],
  ["solar", "kWh/m2/day", 1, 3.6],
  ["solar", "kW-hr/m^2/day", 1, 3.6],
  ["solar", "langleys", 100, 4.184],
  ["humidity", "%", 50, 50],
  ["humidity", "percent", 50, 50],
  ["humidity", "fraction", 0.5, 50],
  ["wind", "m/s", 3, 3],
  ["wind", "m s-1", 3, 3],
  ["wind", "mps", 3, 3],
  ["wind", "0.1 m/s", 30, 3],
  ["wind", "km/h", 36, 10],
  ["wind", "km/day", 864, 10],
  ["wind", "mph", 1, 0.44704],
  ["wind", "knots", 3600, 1852],
];

test.each(units)("%s in %s: %d is %d of ours", (quantity, text, value, ours) => {
  const conversion = conversionFrom(text, quantity);
  expect(conversion).not.toBeNull();
  expect(value * conversion!.scale + conversion!.offset).toBeCloseTo(ours, 9);
});

test.each<[Quantity, string]>([
  ["depth", ""],
  ["depth", "C"],
  ["depth", "constructor"],
  ["temperature", "mm"],
  ["solar", "MJ"],
  ["wind", "m"],
  ["humidity", "g/kg"],
])("of %s, %j is no unit", (quantity, text) => {
  expect(conversionFrom(text, quantity)).toBeNull();
});

describe("names of columns", () => {
  test.each([
    ["rain_mm", "rainMm", "mm"],
    ["Rain (in)", "rainMm", "in"],
    ["Rainfall [mm/day]", "rainMm", "mm/day"],
    ["precip.in", "rainMm", "in"],
    ["Rain..in.", "rainMm", "in"],
    ["rainMm", "rainMm", "Mm"],
    ["PRCP", "rainMm", ""],
    ["tmax_C", "tMaxC", "C"],
    ["tMaxC", "tMaxC", "C"],
    ["T-max °F", "tMaxC", "°F"],
    ["Max Temp (°F)", "tMaxC", "°F"],
    ["temperature_2m_max (°C)", "tMaxC", "°C"],
    ["tminF", "tMinC", "F"],
    ["solar_MJ/m2", "solarMjPerM2", "MJ/m2"],
    ["solarMjPerM2", "solarMjPerM2", "Mj Per M2"],
    ["Solar Radiation (W/m²)", "solarMjPerM2", "W/m²"],
    ["RHmax(%)", "rhMaxPercent", "%"],
    ["rhMinPercent", "rhMinPercent", "Percent"],
    ["Relative humidity, %", "rhMeanPercent", "%"],
    ["dew point (C)", "dewPointC", "C"],
    ["ETo_mm", "referenceEtMm", "mm"],
    ["et0 (in)", "referenceEtMm", "in"],
    ["referenceEtMm", "referenceEtMm", "Mm"],
  ] as const)("%s", (text, element, unit) => {
    const name = readColumnName(text);
    expect([name?.element, name?.unit, name?.conversion === null]).toEqual([element, unit, unit === ""]);
  });

  test.each([
    ["wind_10m_m/s", 10, "m/s"],
    ["wind2mMPerS", 2, "M Per S"],
    ["Wind speed (mph) at 2 m", null, "mph 2 m"],
    ["Wind speed at 3m (mph)", 3, "mph"],
    ["u2 (m/s)", 2, "m/s"],
    ["WS10M_m/s", 10, "m/s"],
    ["wind_mph", null, "mph"],
  ] as const)("%s is wind at a height", (text, heightM, unit) => {
    expect(readColumnName(text)).toMatchObject({ element: "wind2mMPerS", heightM, unit });
  });

  test.each([
    "",
    "station",
    "rain_flag",
    "tmax_qc",
    "PRCP_ATTRIBUTES",
    "ETr_mm",
    "etr",
    "snow_in",
    "tavg_C",
    "温度",
  ])("%j is none of ours", (text) => {
    expect(readColumnName(text)).toBeNull();
  });
});
