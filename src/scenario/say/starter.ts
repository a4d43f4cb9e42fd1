import { scenarioFormat } from "../read/format.ts";

/**
 * A scenario to start from, as the text of a file: JSON has no comments, so notes and telling values stand in for them.
 * All invented; it passes `check` as it stands.
 */
export function starterScenario(): string {
  return `${JSON.stringify(starter, null, 2)}\n`;
}

const starter = {
  format: scenarioFormat,
  name: "My field: does the plow pan matter?",
  invented: true,
  notes: [
    'Everything here is invented: put your own field in its place, and take out "invented".',
    'Write quantities with their unit: "14 in", "35 cm", "1.42 g/cm^3", "50 F", "35 %". Leave out what you do not know: rootfront check tells what is then assumed.',
    "soil: layers from the top down, to the depth that roots might reach. A texture class will do; sand and clay, fieldCapacity, wiltingPoint are better. bulkDensity or penetrationResistance is what holds roots back; origin says whether a dense layer is natural, a tillage pan or a wheel track.",
    'soil.startingWater decides most: what the subsoil holds when the run begins. A push probe gives { "moistDepth": "30 in", "shareBelow": "20 %" }; samples go into each layer as "water": "22 % by weight".',
    'weather: name a daily station record instead, { "record": "my-station.csv" }, and leave pattern out.',
    'cases: the first is compared with each of the others. Each says only what differs: a rootingDepth ("34 in", or "+2 in" against the first), layers by name, surface, crop, fallow.',
    "yield: left out, a published line of the crop is used; give slope { low, middle, high }, threshold and source of your own trial.",
  ],
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [
      {
        name: "topsoil",
        thickness: "5 in",
        texture: "silt loam",
        organicMatter: "1.8 %",
        bulkDensity: "1.35 g/cm^3",
      },
      {
        name: "pan",
        thickness: "4 in",
        texture: "silt loam",
        bulkDensity: "1.62 g/cm^3",
        origin: "tillage pan",
      },
      { name: "subsoil", bottom: "40 in", sand: "15 %", clay: "24 %", bulkDensity: "1.40 g/cm^3" },
      { name: "deep", bottom: "80 in", texture: "silt loam", fieldCapacity: "29 %", wiltingPoint: "12 %" },
    ],
    startingWater: { share: "40 %" },
  },
  weather: { pattern: "summer-peak", annualRain: "12..14 in" },
  crop: { name: "grain sorghum", sowing: "Jun 1" },
  fallow: { length: "8 months" },
  surface: { residueCover: "30 %", treatment: "straight row" },
  cases: [
    { name: "pan as it is" },
    { name: "two inches deeper", rootingDepth: "+2 in" },
    { name: "pan loosened", soil: { layers: [{ name: "pan", bulkDensity: "1.40 g/cm^3" }] } },
  ],
  ensemble: { years: 200, seed: 1 },
};
