/** A scenario that is right, whole enough for a change in any part to be tried on it. Invented. */
export const goodScenario = {
  format: "rootfront-scenario/1",
  name: "Invented field",
  invented: true,
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [
      { name: "topsoil", thickness: "5 in", texture: "silt loam" },
      { name: "pan", thickness: "4 in", texture: "silt loam", bulkDensity: "1.62 g/cm^3" },
      { name: "subsoil", bottom: "72 in", sand: "15 %", clay: "24 %" },
    ],
    startingWater: { share: "40 %" },
  },
  weather: { pattern: "summer-peak", annualRain: "12..14 in" },
  crop: { name: "grain sorghum", sowing: "Jun 1" },
  cases: [{ name: "as it is" }, { name: "deeper", rootingDepth: "+2 in" }],
};

/** The good scenario with values put in by path, such as `soil.layers[1].bulkDensity`; undefined takes the key out. */
export function withChanges(
  changes: Readonly<Record<string, unknown>>,
  base: unknown = goodScenario,
): unknown {
  const scenario: unknown = structuredClone(base);
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
    const last = keys.pop() ?? "";
    let here = scenario as Record<string, unknown>;
    for (const key of keys) here = (here[key] ??= {}) as Record<string, unknown>;
    if (value === undefined) delete here[last];
    else here[last] = value;
  }
  return scenario;
}
