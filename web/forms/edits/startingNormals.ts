import type { Units } from "../../../src/quantity/kinds.ts";
import { sayQuantity } from "../../../src/quantity/sayQuantity.ts";
import type { MonthlyMeans } from "../../../src/weather/records/holdings.ts";
import { normalsFromPattern, rainPatterns } from "../../../src/weather/generate/rainPatterns.ts";
import type { Json } from "../../state/json.ts";

/** Figures to begin a table of monthly normals with: a record's own, where it has every month, or the pattern's invented site. */
export function startingNormals(
  means: MonthlyMeans | null,
  pattern: Json | undefined,
  totalMm: number,
  units: Units,
): Json {
  const own = means === null ? null : ofRecord(means);
  const { rainMm, wetDays, tMaxC, tMinC } =
    own ?? normalsFromPattern(rainPatterns.find((one) => one === pattern) ?? "summer-peak", totalMm);
  const said = (values: readonly number[], kind: "rain" | "temperature" | "duration") =>
    values.map((value) => sayQuantity(value, kind, units));
  return {
    rain: said(rainMm, "rain"),
    ...(wetDays === null ? {} : { wetDays: said(wetDays, "duration") }),
    tMax: said(tMaxC, "temperature"),
    tMin: said(tMinC, "temperature"),
  };
}

function ofRecord({ rainMm, wetDays, tMaxC, tMinC }: MonthlyMeans) {
  const [rain, wet, high, low] = [rainMm, wetDays, tMaxC, tMinC].map((values) =>
    (values ?? []).filter((one) => one !== null),
  );
  const whole = [rain, wet, high, low].every((values) => values?.length === 12);
  return whole ? { rainMm: rain!, wetDays: wet!, tMaxC: high!, tMinC: low! } : null;
}
