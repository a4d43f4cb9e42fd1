import { describe, expect, test } from "vitest";
import { cropNames } from "../../../src/crop/crops.ts";
import { InputError, refuse } from "../../../src/problem.ts";
import { readJson, resolveScenario } from "../../../src/scenario/index.ts";
import { goodScenario, withChanges } from "./good-scenario.ts";

/** What is changed in a scenario that is right, and every line that a person then reads. */
type Row = readonly [name: string, changes: Readonly<Record<string, unknown>>, ...lines: string[]];

const rows: readonly Row[] = [
  [
    "another format",
    { format: "rootfront-scenario/2" },
    'format: expected "rootfront-scenario/1", found "rootfront-scenario/2"; write "format": "rootfront-scenario/1"',
  ],
  ["no name", { name: undefined }, "name: expected text of 1 to 120 letters, found nothing; give it"],
  [
    "heads of sorghum read as ears of corn",
    {
      "crop.name": "corn",
      evidence: {
        counts: [
          {
            case: "as is",
            crop: "sorghum",
            rowWidth: "30 in",
            spots: [{ heads: 30, kernelsPerHead: [900] }],
          },
        ],
      },
    },
    'evidence.counts[0].crop: expected counts of corn, the scenario\'s crop, found "sorghum"; leave these counts out, or name the crop that was counted',
  ],
  ["empty name", { name: " " }, 'name: expected text of 1 to 120 letters, found " "; write something'],
  [
    "a misspelt key at the top",
    { wether: {} },
    'wether: expected a key that belongs here, found "wether"; did you mean "weather"?',
  ],
  [
    "a key that is near nothing",
    { "soil.zzzz": 1 },
    'soil.zzzz: expected one of the keys layers, horizons, restriction, sliceThickness, hydrologicGroup, startingWater, waterMeasured, penetrometer, found "zzzz"; leave it out',
  ],
  [
    "a misspelt key in a layer",
    { "soil.layers[1].bulkdensty": "1.6 g/cm^3" },
    'soil.layers[1].bulkdensty: expected a key that belongs here, found "bulkdensty"; did you mean "bulkDensity"?',
  ],
  [
    "a misspelt key in a case",
    { "cases[1].rotingDepth": "+2 in" },
    'cases[1].rotingDepth: expected a key that belongs here, found "rotingDepth"; did you mean "rootingDepth"?',
  ],
  [
    "a group in place of a text",
    { "site.latitude": { deg: 38 } },
    `site.latitude: expected a latitude such as "38.5 N", "38°30' N" or -33.2, found a group of keys; write degrees with a point, or degrees and minutes; N or no letter is north, S or minus is south`,
  ],
  [
    "a text in place of a group",
    { fallow: "14 months" },
    'fallow: expected a group of keys in braces, such as { "length": ... }, found "14 months"; write it between { and }',
  ],
  [
    "a group in place of a list",
    { "soil.layers": { name: "topsoil" } },
    "soil.layers: expected a list of 1 to 60 in brackets, found a group of keys; write it between [ and ]",
  ],
  [
    "latitude beyond the pole",
    { "site.latitude": "98 N" },
    `site.latitude: expected a latitude from 66 S to 66 N, found "98 N"; check the number`,
  ],
  [
    "latitude with two sides",
    { "site.latitude": "-33 S" },
    `site.latitude: expected a latitude such as "38.5 N", "38°30' N" or -33.2, found "-33 S"; write degrees with a point, or degrees and minutes; N or no letter is north, S or minus is south`,
  ],
  [
    "latitude where nothing grows",
    { "site.latitude": 78 },
    "site.latitude: expected a latitude from 66 S to 66 N, found 78; check the number",
  ],
  [
    "elevation as a weight",
    { "site.elevation": "3300 lb" },
    'site.elevation: expected a height such as "3300 ft" or "1000 m", found "3300 lb"; write the unit as ft or m',
  ],
  [
    "no latitude anywhere",
    { "site.latitude": undefined },
    `site.latitude: expected a latitude such as "38.5 N", found nothing; give the field's latitude`,
  ],
  [
    "thickness with a minus",
    { "soil.layers[0].thickness": "-5 in" },
    'soil.layers[0].thickness: expected more than 0 and at most 32 ft (10 m), found "-5 in"; check the number and its unit',
  ],
  [
    "thickness of nothing",
    { "soil.layers[0].thickness": 0 },
    "soil.layers[0].thickness: expected more than 0 and at most 32 ft (10 m), found 0; check the number and its unit",
  ],
  [
    "thickness as a weight",
    { "soil.layers[0].thickness": "5 kg" },
    'soil.layers[0].thickness: expected a depth such as "14 in" or "350 mm", found "5 kg"; write the unit as in, ft, mm, cm or m',
  ],
  [
    "thickness with a decimal comma",
    { "soil.layers[0].thickness": "5,5 in" },
    'soil.layers[0].thickness: expected a depth such as "14 in" or "350 mm", found "5,5 in"; start with a number written with a point, such as 1.5',
  ],
  [
    "a layer without thickness",
    { "soil.layers[0].thickness": undefined },
    `soil.layers[0].thickness: expected the layer's thickness such as "6 in", or its bottom, found nothing; give one of the two`,
  ],
  [
    "a bottom above its top",
    { "soil.layers[2].bottom": "8 in" },
    "soil.layers[2].bottom: expected a depth below the layer's top, 9 in, found 8 in; depths are measured downward from the surface, top layer first",
  ],
  [
    "thickness and bottom that disagree",
    { "soil.layers[2].thickness": "20 in" },
    "soil.layers[2].bottom: expected the layer's top and thickness together, 29 in, found 72 in; leave one of the two out",
  ],
  [
    "a column deeper than any root",
    {
      "soil.layers[0].thickness": "9 m",
      "soil.layers[2].bottom": undefined,
      "soil.layers[2].thickness": "2 m",
    },
    "soil.layers[2].thickness: expected layers of at most 32 ft (10 m) together, found 437 in; leave out what roots never reach",
  ],
  [
    "density in inches",
    { "soil.layers[1].bulkDensity": "1.42 in" },
    'soil.layers[1].bulkDensity: expected mass per volume such as "1.42 g/cm^3", found "1.42 in"; give the dry mass of the layer per volume, or leave it out to estimate it from texture',
  ],
  [
    "density of rock",
    { "soil.layers[1].bulkDensity": "2.7 g/cm^3" },
    'soil.layers[1].bulkDensity: expected 0.5 to 2.2 g/cm^3, found "2.7 g/cm^3"; give the dry mass of the layer per volume, or leave it out to estimate it from texture',
  ],
  [
    "density in kg/m3 without its unit",
    { "soil.layers[1].bulkDensity": 1620 },
    "soil.layers[1].bulkDensity: expected 0.5 to 2.2 g/cm^3, found 1620; give the dry mass of the layer per volume, or leave it out to estimate it from texture",
  ],
  [
    "an unknown texture",
    { "soil.layers[0].texture": "silty lome" },
    'soil.layers[0].texture: expected a USDA texture class (sand, loamy sand, sandy loam, loam, silt loam, silt, sandy clay loam, clay loam, silty clay loam, sandy clay, silty clay, clay), found "silty lome"; did you mean "silt loam"?',
  ],
  [
    "no texture",
    { "soil.layers[0].texture": undefined },
    'soil.layers[0].texture: expected a USDA texture class, or both sand and clay, found nothing; give a class such as "silt loam", or sand and clay in percent',
  ],
  [
    "sand and clay above 100 %",
    { "soil.layers[2].sand": "80 %" },
    "soil.layers[2].clay: expected sand and clay that together make at most 100 %, found 104 % together; check both; silt is what they leave",
  ],
  [
    "sand in percent without its sign",
    { "soil.layers[2].sand": 15 },
    'soil.layers[2].sand: expected 0 to 100 %, found 15; write percent with its sign, such as "35 %"',
  ],
  [
    "clay without sand",
    { "soil.layers[2].sand": undefined },
    'soil.layers[2].sand: expected a USDA texture class, or both sand and clay, found nothing; give a class such as "silt loam", or sand and clay in percent',
  ],
  [
    "field capacity below wilting point",
    { "soil.layers[2].fieldCapacity": "10 %", "soil.layers[2].wiltingPoint": "15 %" },
    "soil.layers[2].wiltingPoint: expected a wilting point above 0 and below field capacity, found wilting point 15 % (stated), field capacity 10 % (stated); correct them, or give both",
  ],
  [
    "two layers of one name",
    { "soil.layers[2].name": "pan" },
    'soil.layers[2].name: expected a name of its own for each layer, found "pan" again; give the layers different names',
  ],
  [
    "no soil at all",
    { "soil.layers": undefined },
    "soil: expected either layers or horizons, found neither; describe the layers, or name a file of horizons",
  ],
  [
    "an empty list of layers",
    { "soil.layers": [] },
    "soil.layers: expected a list of 1 to 60 in brackets, found an empty list; check how many there are",
  ],
  [
    "slices too thick",
    { "soil.sliceThickness": "4 in" },
    'soil.sliceThickness: expected 0.08 to 1 in (2 to 25.4 mm), found "4 in"; check the number and its unit',
  ],
  [
    "an unknown origin of a layer",
    { "soil.layers[0].origin": "plough pan" },
    'soil.layers[0].origin: expected one of "natural", "tillage pan", "wheel track", found "plough pan"; choose one of these',
  ],
  [
    "an unknown restriction",
    { "soil.restriction": { depth: "60 in", kind: "bedrock" } },
    'soil.restriction.kind: expected one of "rock", "caliche", "cemented pan", "dense till", "gravel", found "bedrock"; choose one of these',
  ],
  [
    "water above 100 %",
    { "soil.startingWater.share": "140 %" },
    'soil.startingWater.share: expected 0 to 100 %, found "140 %"; check the number and its unit',
  ],
  [
    "two ways of starting water",
    { "soil.startingWater.moistDepth": "30 in" },
    "soil.startingWater: expected share, or moistDepth and shareBelow, found all of them; leave out one way",
  ],
  [
    "a probe without what lies below",
    { "soil.startingWater": { moistDepth: "30 in" } },
    "soil.startingWater.shareBelow: expected moistDepth and shareBelow together, found nothing; say how moist the soil is below the probe's depth",
  ],
  [
    "water in one layer only",
    { "soil.startingWater": undefined, "soil.layers[0].water": "22 % by weight" },
    'soil.layers[1].water: expected water in every layer, such as "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available", found nothing; give it, or take water out of the other layers',
    'soil.layers[2].water: expected water in every layer, such as "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available", found nothing; give it, or take water out of the other layers',
  ],
  [
    "water here and in the layers",
    { "soil.layers[0].water": "22 % by weight" },
    "soil.startingWater: expected starting water here or in the layers, found both; leave one out",
  ],
  [
    "water of no kind",
    {
      "soil.startingWater": undefined,
      "soil.layers[0].water": "22 %",
      "soil.layers[1].water": "22 % by weight",
      "soil.layers[2].water": "22 % by weight",
    },
    'soil.layers[0].water: expected water as "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available", found "22 %"; say by weight, by volume, available or of available',
  ],
  [
    "water beyond saturation",
    {
      "soil.startingWater": undefined,
      "soil.layers[0].water": "9 in available",
      "soil.layers[1].water": "22 % by weight",
      "soil.layers[2].water": "22 % by weight",
    },
    `soil.layers[0].water: expected 5.2 % to 44.4 % by volume, half of wilting point to saturation, found "9 in available", which is 190 % by volume; check the sample, and the layer's density and texture`,
  ],
  [
    "no weather",
    { weather: {} },
    "weather: expected weather.record, weather.monthlyNormals, or weather.pattern with weather.annualRain, found none of them; name a station record, or give the year's rain and its pattern",
  ],
  [
    "a pattern without rain",
    { "weather.annualRain": undefined },
    `weather.annualRain: expected the year's rain such as "13 in" or "12..14 in" beside a pattern, found nothing; give it`,
  ],
  [
    "a pattern beside normals",
    {
      "weather.monthlyNormals": {
        rain: Array(12).fill("1 in"),
        tMax: Array(12).fill("50 F"),
        tMin: Array(12).fill("30 F"),
      },
    },
    'weather.pattern: expected one source of weather, found "summer-peak" beside monthlyNormals; leave pattern out',
  ],
  [
    "eleven months",
    {
      weather: {
        monthlyNormals: {
          rain: Array(11).fill("1 in"),
          tMax: Array(12).fill("50 F"),
          tMin: Array(12).fill("30 F"),
        },
      },
    },
    "weather.monthlyNormals.rain: expected a list of 12 in brackets, found a list of 11; give 12 of them",
  ],
  [
    "normals without rain, and no record",
    { weather: { monthlyNormals: { tMax: Array(12).fill("50 F"), tMin: Array(12).fill("30 F") } } },
    "weather.monthlyNormals.rain: expected the mean rain of each month, since there is no weather.record to take rain from, found nothing; give twelve amounts, January first, or name a record",
  ],
  [
    "nights warmer than days",
    {
      weather: {
        monthlyNormals: {
          rain: Array(12).fill("1 in"),
          tMax: Array(12).fill("50 F"),
          tMin: [...Array(11).fill("30 F"), "60 F"],
        },
      },
    },
    "weather.monthlyNormals.tMin[11]: expected at most that month's tMax, 50 F (10 C), found 60 F (15.6 C); swap or correct the two",
  ],
  [
    "rain with the larger total first",
    { "weather.annualRain": "14..12 in" },
    'weather.annualRain: expected rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"], found "14..12 in"; put the smaller total first',
  ],
  [
    "rain of a rain forest",
    { "weather.annualRain": "1300 in" },
    'weather.annualRain: expected rainfall totals from 1 to 197 in (25 to 5000 mm), found "1300 in"; check the number and its unit',
  ],
  [
    "rain by the year and by the season",
    { "weather.seasonRain": "8 in" },
    "weather.seasonRain: expected annualRain or seasonRain, found both; leave one out",
  ],
  [
    "a date that is none",
    { weather: { record: "record.csv", from: "2021-02-30" } },
    'weather.from: expected a date such as "2020-06-01", found "2021-02-30"; give a day that the month has',
  ],
  [
    "a station without a record",
    { "weather.station": "KS01" },
    "weather.station: expected a weather.record that it belongs to, found nothing; name the record, or leave this out",
  ],
  [
    "a record that is not there",
    { weather: { record: "nowhere.csv" } },
    'weather.record: expected a file, found "nowhere.csv"; check the path',
  ],
  [
    "an unknown crop",
    { "crop.name": "sorgum" },
    `crop.name: expected one of ${cropNames.join(", ")}, found "sorgum"; did you mean "sorghum"?`,
  ],
  [
    "an open crop name",
    { "crop.name": "wheat" },
    'crop.name: expected one crop, found "wheat"; say "winter wheat" or "spring wheat"',
  ],
  [
    "half a crop of one's own",
    { "crop.name": "safflower", "crop.kcbMid": 1.1 },
    'crop.stageLengths: expected every number of "safflower", a crop of your own (lacking: stageLengths, kcbInitial, kcbEnd, height, maxRootDepth), found nothing; give them, or name a crop we have numbers of',
  ],
  [
    "a sowing day that no year has",
    { "crop.sowing": "Jun 31" },
    'crop.sowing: expected a day of the year such as "Jun 1" or "06-01", found "Jun 31"; give a day that the month has',
  ],
  [
    "a sowing day that may be two",
    { "crop.sowing": "6/1" },
    'crop.sowing: expected a day of the year such as "Jun 1" or "06-01", found "6/1"; write the month by name',
  ],
  [
    "a coefficient in quotes",
    { "crop.kcbMid": "1.1" },
    'crop.kcbMid: expected a number, 0 to 1.5, found "1.1"; write it without quotes or unit',
  ],
  [
    "a coefficient out of range",
    { "crop.kcbMid": 11 },
    "crop.kcbMid: expected a number, 0 to 1.5, found 11; check the number",
  ],
  [
    "three stages",
    { "crop.stageLengths": ["20 days", "35 days", "40 days"] },
    "crop.stageLengths: expected a list of 4 in brackets, found a list of 3; give 4 of them",
  ],
  [
    "stages that do not fit the clock",
    { "crop.clock": "days", "crop.stageLengths": ["200 C day", "400 C day", "400 C day", "200 C day"] },
    'crop.stageLengths[0]: expected a time such as "14 months" or "120 days", as the clock is "days", found "200 C day"; write the unit as days, weeks, months or years',
  ],
  [
    "a maturity nobody sells",
    { "crop.maturity": "medum" },
    'crop.maturity: expected one of "early", "medium", "full", found "medum"; did you mean "medium"?',
  ],
  [
    "a maturity and stage lengths",
    { "crop.maturity": "early", "crop.stageLengths": ["200 C day", "400 C day", "400 C day", "200 C day"] },
    "crop.stageLengths: expected maturity or stageLengths, found both; leave one way out",
  ],
  [
    "ripe and harvested on stated days",
    { "crop.ripe": "Sep 20", "crop.harvest": "Oct 1" },
    "crop.harvest: expected ripe or harvest, found both; leave one way out",
  ],
  [
    "ripe on no day",
    { "crop.ripe": "Sep 31" },
    'crop.ripe: expected a day of the year such as "Jun 1" or "06-01", found "Sep 31"; give a day that the month has',
  ],
  [
    "ripe a month after sowing",
    { "crop.ripe": "Jul 1" },
    "crop.ripe: expected a day that leaves grain sorghum sown Jun 1 at least 40 days in spring or summer, within a year, found Jul 1; check the day, and the day of sowing",
  ],
  [
    "harvested before it was sown",
    { "crop.harvest": "Jun 5" },
    "crop.harvest: expected a day that leaves grain sorghum sown Jun 1 at least 40 days in spring or summer, within a year, found Jun 5; check the day, and the day of sowing",
  ],
  [
    "roots that end nowhere",
    { "crop.rootsEnd": "tassel" },
    'crop.rootsEnd: expected one of "flowering", "end of mid-season", "maturity", found "tassel"; choose one of these',
  ],
  [
    "spring on no day",
    { "crop.springGrowth": "3/1" },
    'crop.springGrowth: expected a day of the year such as "Jun 1" or "06-01", found "3/1"; write the month by name',
  ],
  [
    "a maturity for a crop of one's own",
    {
      crop: {
        name: "safflower",
        sowing: "May 1",
        stageLengths: ["20 days", "35 days", "45 days", "25 days"],
        kcbInitial: 0.15,
        kcbMid: 1,
        kcbEnd: 0.2,
        height: "30 in",
        maxRootDepth: "6 ft",
        maturity: "early",
      },
      yield: {
        slope: { low: "80 lb/ac/in", middle: "100 lb/ac/in", high: "120 lb/ac/in" },
        threshold: "5 in",
        unit: "lb/ac",
      },
    },
    'crop.maturity: expected stageLengths alone, for "safflower", a crop of your own, found maturity; leave it out',
  ],
  [
    "a full population alone",
    { "crop.fullPopulation": "20,000 plants/ac" },
    'crop.population: expected the plants that stand there, such as "16,000 plants/ac", beside a full population, found nothing; give them, or leave fullPopulation out',
  ],
  [
    "a population in thousands, without a unit",
    { "crop.population": 16 },
    'crop.population: expected a plant count per area such as "24,000 plants/ac" or "6 plants/m^2", found 16; write the unit, and the thousands out: "16,000 plants/ac", or plants/ha or plants/m^2',
  ],
  [
    "a population in thousands an acre",
    { "crop.population": "16 plants/ac" },
    'crop.population: expected a stand of grain sorghum: a full one has 50,000 plants/ac, a thin one a part of that, found 16 plants/ac; write the thousands out: "16,000 plants/ac"',
  ],
  [
    "a population far above a full stand",
    { "crop.population": "160 plants/m^2" },
    'crop.population: expected a stand of grain sorghum: a full one has 50,000 plants/ac, a thin one a part of that, found 647,497 plants/ac; count the plants of a thousandth of an acre and write the thousands out, such as "16,000 plants/ac"',
  ],
  [
    "fallow of ten years",
    { "fallow.length": "10 years" },
    'fallow.length: expected 0 to 36 months, found "10 years"; check the number and its unit',
  ],
  [
    "residue above 100 %",
    { "surface.residueCover": "130 %" },
    'surface.residueCover: expected 0 to 100 %, found "130 %"; check the number and its unit',
  ],
  [
    "a way of rotting that nobody knows",
    { "surface.residueDecay": "slow" },
    'surface.residueDecay: expected one of "by weather", "none", found "slow"; choose one of these',
  ],
  [
    "a curve number above 100",
    { "surface.curveNumber": 170 },
    "surface.curveNumber: expected a number, 30 to 100, found 170; check the number",
  ],
  [
    "two cases of one name",
    { "cases[1].name": "as it is" },
    'cases[1].name: expected a name of its own for each case, found "as it is" again; give the cases different names',
  ],
  [
    "a first case told from itself",
    { "cases[0].rootingDepth": "+2 in" },
    'cases[0].rootingDepth: expected a depth such as "34 in": only later cases are told against the first, found "+2 in"; give its depth, or leave it out',
  ],
  [
    "roots below the soil described",
    { "cases[1].rootingDepth": "90 in" },
    "cases[1].rootingDepth: expected a depth within the soil described, 72 in, found 90 in; describe the soil deeper, or give a smaller depth",
  ],
  [
    "a rooting depth without a number",
    { "cases[1].rootingDepth": "deep" },
    'cases[1].rootingDepth: expected a rooting depth such as "34 in", or "+2 in" against the first case, found "deep"; start with a number written with a point, such as 1.5',
  ],
  [
    "a case of a layer that is not there",
    { "cases[1].soil": { layers: [{ name: "pann", bulkDensity: "1.4 g/cm^3" }] } },
    'cases[1].soil.layers[0].name: expected a layer of the base soil: "topsoil", "pan", "subsoil", found "pann"; did you mean "pan"?',
  ],
  [
    "a case that makes a layer impossible",
    { "cases[1].soil": { layers: [{ name: "subsoil", clay: "90 %" }] } },
    "cases[1].soil.layers[0].clay: expected sand and clay that together make at most 100 %, found 105 % together; check both; silt is what they leave",
  ],
  [
    "no cases in the list",
    { cases: [] },
    "cases: expected a list of 1 to 20 in brackets, found an empty list; check how many there are",
  ],
  [
    "an unknown yield line",
    { "yield.line": "Kansass" },
    'yield.line: expected a yield line of grain sorghum: Kansas; Bushland, Texas; west-central Kansas, found "Kansass"; did you mean "Kansas"?',
  ],
  [
    "yield by water in feet",
    { "yield.slope": { low: "1 bu/ac/ft", middle: "5 bu", high: "9 bu/ac/in" } },
    'yield.slope.middle: expected yield for each depth of water such as "4.9 bu/ac/in" or "12 kg/ha/mm", found "5 bu"; write the unit as bu/ac/in, lb/ac/in or kg/ha/mm',
  ],
  [
    "slopes out of order",
    { "yield.slope": { low: "5 bu/ac/in", middle: "1 bu/ac/in", high: "9 bu/ac/in" } },
    "yield.slope: expected low, middle and high in that order, found 5 bu/ac/in, 1 bu/ac/in, 9 bu/ac/in; put the smallest first",
  ],
  [
    "bushels of a crop sold by the pound",
    { "crop.name": "sunflower", "yield.cap": "40 bu/ac" },
    'yield.cap: expected a yield such as "45 bu/ac" or "2800 kg/ha", found "40 bu/ac"; this crop is not counted in bushels: write lb/ac or kg/ha, or give yield.unit and yield.testWeight',
  ],
  [
    "no years",
    { "ensemble.years": 0 },
    "ensemble.years: expected a whole number from 1 to 5000, found 0; check the number",
  ],
  [
    "half a year",
    { "ensemble.years": 1.5 },
    "ensemble.years: expected a whole number from 1 to 5000, found 1.5; check the number",
  ],
  [
    "a seed in quotes",
    { "ensemble.seed": "1" },
    'ensemble.seed: expected a whole number from 0 to 4294967295, found "1"; write it without quotes',
  ],
  [
    "an unknown uptake",
    { "model.uptake": "by layer" },
    'model.uptake: expected one of "by slice", "root-zone average", found "by layer"; choose one of these',
  ],
  [
    "an unknown way of drying",
    { "model.evaporation": "one-stage" },
    'model.evaporation: expected one of "two-stage", "dual coefficient", found "one-stage"; choose one of these',
  ],
  [
    "a way of drying as true",
    { "model.evaporation": true },
    'model.evaporation: expected one of "two-stage", "dual coefficient", found true; choose one of these',
  ],
  [
    "dense roots as a weight",
    { "crop.denseRoots": "16 lb" },
    'crop.denseRoots: expected a depth such as "14 in" or "350 mm", found "16 lb"; write the unit as in, ft, mm, cm or m',
  ],
  [
    "dense roots above the ground",
    { "crop.denseRoots": "-4 in" },
    'crop.denseRoots: expected 0 to 20 ft (0 to 6000 mm), found "-4 in"; check the number and its unit',
  ],
  [
    "uptake that halves in no depth",
    { "crop.uptakeHalving": 0 },
    "crop.uptakeHalving: expected 2 in to 330 ft (50 mm to 100 m), found 0; check the number and its unit",
  ],
  [
    "uptake that halves in a share",
    { "crop.uptakeHalving": "50 %" },
    'crop.uptakeHalving: expected a depth such as "14 in" or "350 mm", found "50 %"; write the unit as in, ft, mm, cm or m',
  ],
  [
    "a halving depth of one case that is none",
    { "cases[1].crop.uptakeHalving": "1 in" },
    'cases[1].crop.uptakeHalving: expected 2 in to 330 ft (50 mm to 100 m), found "1 in"; check the number and its unit',
  ],
  [
    "deep uptake unsure by less than nothing",
    { "ensemble.deepUptakeSpread": "-10 %" },
    'ensemble.deepUptakeSpread: expected 0 to 400 %, found "-10 %"; check the number and its unit',
  ],
  [
    "deep uptake unsure by 100 without the sign",
    { "ensemble.deepUptakeSpread": 100 },
    'ensemble.deepUptakeSpread: expected 0 to 400 %, found 100; write percent with its sign, such as "35 %"',
  ],
  [
    "deep uptake unsure by a depth",
    { "ensemble.deepUptakeSpread": "24 in" },
    'ensemble.deepUptakeSpread: expected a share such as "35 %" or 0.35, found "24 in"; write it in percent with the sign, or as a number from 0 to 1',
  ],
  [
    "yes in place of true",
    { invented: "yes" },
    'invented: expected true or false, found "yes"; write true or false without quotes',
  ],
  [
    "rows that do not make 100 %",
    {
      rowPositions: [
        { case: "as it is", share: "30 %" },
        { case: "deeper", share: "60 %" },
      ],
    },
    "rowPositions: expected shares that together make 100 %, found 90 %; change the shares until they do",
  ],
  [
    "rows of a case that is not there",
    {
      rowPositions: [
        { case: "as is", share: "30 %" },
        { case: "deeper", share: "70 %" },
      ],
    },
    'rowPositions[0].case: expected the name of a case: "as it is", "deeper", found "as is"; did you mean "as it is"?',
  ],
  [
    "a price without its currency",
    { "money.price": "5/bu" },
    'money.price: expected a price such as "5 USD/bu" or "0.18 EUR/kg", found "5/bu"; write amount, currency, and per bu, lb, kg or t',
  ],
  [
    "two currencies",
    { money: { price: "5 USD/bu", addedCost: "12 EUR/ac" } },
    'money.addedCost: expected an amount in USD, as the price is, found "12 EUR/ac"; use one currency',
  ],
  [
    "dug roots as a date",
    { evidence: { rootDepths: [{ case: "as it is", date: "14 July 2021", depths: ["24 in"] }] } },
    'evidence.rootDepths[0].date: expected a date such as "2020-06-01", found "14 July 2021"; write year, month and day, in that order',
  ],
  [
    "roots that did what no word says",
    {
      evidence: {
        rootDepths: [{ case: "as it is", date: "2024-07-14", depths: ["24 in"], roots: ["turned"] }],
      },
    },
    'evidence.rootDepths[0].roots[0]: expected one of "straight", "turned aside", "stopped", "through a crack", found "turned"; choose one of these',
  ],
  [
    "words for more plants than were dug",
    {
      evidence: {
        rootDepths: [
          { case: "as it is", date: "2024-07-14", depths: ["24 in"], roots: ["straight", "stopped"] },
        ],
      },
    },
    "evidence.rootDepths[0].roots: expected one word, for the one plant, found 2; give each plant its word",
  ],
  [
    "roots that turned below where they end",
    {
      evidence: {
        rootDepths: [{ case: "as it is", date: "2024-07-14", depths: ["7 in"], turnedAt: ["9 in"] }],
      },
    },
    "evidence.rootDepths[0].turnedAt[0]: expected a depth above the deepest root dug, 7 in, found 9 in; give the depth at which the roots turned, not how far they went",
  ],
  [
    "rain alone, without temperatures",
    { weather: { record: "rain.csv" } },
    "weather.monthlyNormals: expected monthly temperatures beside a record that has neither temperatures nor reference ET, found nothing; give weather.monthlyNormals, or a record with both daily temperatures",
  ],
  [
    "a file of horizons and layers",
    { "soil.horizons": { file: "horizons.csv" } },
    "soil: expected either layers or horizons, found both; describe the layers, or name a file of horizons",
  ],
  [
    "a component and a pedon",
    { "soil.layers": undefined, "soil.horizons": { file: "horizons.csv", component: "A", pedon: "B" } },
    "soil.horizons.pedon: expected a component or a pedon, found both; leave one out",
  ],
  [
    "soil thinner than evaporation reaches",
    { "soil.layers": [{ name: "crust", thickness: "2 in", texture: "loam" }] },
    "soil.layers: expected soil at least as deep as evaporation dries it, 3.9 in, found 2 in; describe the soil deeper",
  ],
  [
    "more free evaporation than the topsoil holds",
    { "surface.readilyEvaporable": "0.9 in", "surface.evaporatingDepth": "2 in" },
    "surface.readilyEvaporable: expected less than all the water that evaporation can take, 0.48 in, found 0.9 in; leave it out to take it from the texture",
  ],
  [
    "several at once, in the order of the file",
    { "site.latitude": "north", "soil.layers[1].bulkDensity": "heavy", "crop.name": 7, "ensemble.years": -1 },
    `site.latitude: expected a latitude such as "38.5 N", "38°30' N" or -33.2, found "north"; write degrees with a point, or degrees and minutes; N or no letter is north, S or minus is south`,
    'soil.layers[1].bulkDensity: expected mass per volume such as "1.42 g/cm^3", found "heavy"; give the dry mass of the layer per volume, or leave it out to estimate it from texture',
    "crop.name: expected text of 1 to 60 letters, found 7; write it between quotes",
    "ensemble.years: expected a whole number from 1 to 5000, found -1; check the number",
  ],
];

/** What is no JSON, and the line that a person then reads. */
const texts: readonly (readonly [name: string, text: string, line: string])[] = [
  [
    "an empty file",
    "",
    'f.json line 1, column 1: expected a value such as "14 in", 12, true, [ or {, found the end of the file; put text, and a quantity with its unit, between double quotes',
  ],
  [
    "no JSON",
    "hello",
    'f.json line 1, column 1: expected a value such as "14 in", 12, true, [ or {, found "hello"; put text, and a quantity with its unit, between double quotes',
  ],
  [
    "a list",
    "[]",
    'scenario: expected a group of keys in braces, such as { "format": ... }, found an empty list; write it between { and }',
  ],
  [
    "a comma too many",
    '{\n  "name": "x",\n}',
    'f.json line 3, column 1: expected a key between double quotes, such as "name", found "}"; take out the comma before it',
  ],
  [
    "a comma missing",
    '{\n  "name": "x"\n  "crop": {}\n}',
    "f.json line 3, column 3: expected a comma or }, found a double quote; put a comma between values, and a quantity with its unit between double quotes",
  ],
  [
    "a quantity without quotes",
    '{ "thickness": 14 in }',
    'f.json line 1, column 19: expected a comma or }, found "in"; put a comma between values, and a quantity with its unit between double quotes',
  ],
  [
    "single quotes",
    "{ 'name': 1 }",
    `f.json line 1, column 3: expected a key between double quotes, such as "name", found "'"; put the key between double quotes`,
  ],
  [
    "a comment",
    '{\n  // mine\n  "name": "x" }',
    'f.json line 2, column 3: expected no comments, found "/"; JSON has none; write them in "notes"',
  ],
  [
    "a key twice",
    '{ "name": "x", "name": "y" }',
    'f.json line 1, column 16: expected each key once, found "name"; take out one of the two',
  ],
  [
    "a file that breaks off",
    '{ "soil": { "layers": [',
    'f.json line 1, column 24: expected a value such as "14 in", 12, true, [ or {, found the end of the file; put text, and a quantity with its unit, between double quotes',
  ],
  [
    "a text that does not end",
    '{ "name": "x\n}',
    "f.json line 1, column 11: expected a closing double quote on the same line, found a double quote; put it in",
  ],
  [
    "a backslash",
    '{ "file": "c:\\data" }',
    'f.json line 1, column 14: expected one of \\" \\\\ \\/ \\n \\t, found "\\"; write \\\\ for a backslash',
  ],
  [
    "two scenarios",
    "{} {}",
    'f.json line 1, column 4: expected nothing after the last }, found "{"; take out what follows',
  ],
  [
    "NaN",
    '{ "seed": NaN }',
    'f.json line 1, column 11: expected a value such as "14 in", 12, true, [ or {, found "NaN"; put text, and a quantity with its unit, between double quotes',
  ],
];

/** Sod is not sown and does not ripen; only pasture has a fair condition. */
const ofSod: readonly Row[] = [
  [
    "sod with a maturity",
    { "crop.name": "sod", "crop.maturity": "early" },
    "crop.maturity: expected no maturity for sod, which does not ripen, found one; leave it out; stageLengths says how long it grows",
  ],
  [
    "sod with a day on which it is ripe",
    { "crop.name": "perennial grass", "crop.ripe": "Aug 1" },
    "crop.ripe: expected no day of ripeness for perennial grass, which does not ripen, found one; leave it out; stageLengths says how long it grows",
  ],
  [
    "sod that is worked",
    { "crop.name": "sod", "surface.treatment": "contoured" },
    'surface.treatment: expected none for pasture or range, which is not worked, found "contoured"; leave it out',
  ],
  [
    "a fair condition of a crop",
    { "surface.condition": "fair" },
    `surface.condition: expected poor or good for row crops, found "fair"; only pasture or range has a fair condition in the handbook's table`,
  ],
];

/** Words people use, and what has another reason than it seems. */
const ofWords: readonly Row[] = [
  [
    "two crops compared",
    { "cases[1].crop": { name: "corn" } },
    'cases[1].crop.name: expected one crop for all cases: two crops are two yield lines, each with its own place and errors, found "corn"; leave it out, and ask the quick question with each crop',
  ],
  [
    "a late maturity",
    { "crop.maturity": "late" },
    'crop.maturity: expected one of "early", "medium", "full", found "late"; did you mean "full"?',
  ],
  [
    "a layer called a pan",
    { "soil.layers[1].origin": "pan" },
    'soil.layers[1].origin: expected one of "natural", "tillage pan", "wheel track", found "pan"; did you mean "tillage pan"?',
  ],
  [
    "a plant habit beside a stand",
    { "crop.stand": "50 %", "crop.plantHabit": "stays small" },
    "crop.plantHabit: expected a population that it belongs to, found stand, which says the leaves outright; leave plantHabit out, or give population in place of stand",
  ],
  [
    "a plant habit alone",
    { "crop.plantHabit": "stays small" },
    "crop.plantHabit: expected a population that it belongs to, found none; give population, or leave plantHabit out",
  ],
  [
    "roots deeper than the rock",
    { "soil.restriction": { kind: "rock", depth: "40 in" }, "cases[1].rootingDepth": "60 in" },
    "cases[1].rootingDepth: expected a depth above the rock that soil.restriction states, 40 in, found 60 in; roots end there: give a smaller depth, or mend soil.restriction",
  ],
  [
    "an outlook of a day that is none",
    { outlook: { date: "2024-02-30" } },
    'outlook.date: expected a date such as "2020-06-01", found "2024-02-30"; give a day that the month has',
  ],
  [
    "an outlook in a year that is a slip of the pen",
    { outlook: { date: "0204-07-03" } },
    "outlook.date: expected a day from 1800 to 2200, found 0204-07-03; check the year",
  ],
  [
    "water measured on no day",
    { outlook: { moistDepth: "20 in", shareBelow: "30 %" } },
    "outlook.date: expected the day that the water was measured on, found nothing; give it",
  ],
  [
    "a probe without the soil below it",
    { outlook: { date: "2024-07-03", moistDepth: "20 in" } },
    "outlook.shareBelow: expected moistDepth and shareBelow together, found nothing; say how moist the soil is below the probe's depth",
  ],
  [
    "water measured in two ways",
    {
      outlook: {
        date: "2024-07-03",
        moistDepth: "20 in",
        shareBelow: "30 %",
        layers: [{ name: "topsoil", water: "22 % by volume" }],
      },
    },
    "outlook: expected layers, or moistDepth and shareBelow, found all of them; leave out one way",
  ],
  [
    "water measured in a layer that is none",
    { outlook: { date: "2024-07-03", layers: [{ name: "subsoill", water: "22 % by volume" }] } },
    'outlook.layers[0].name: expected a layer of the soil: "topsoil", "pan", "subsoil", found "subsoill"; did you mean "subsoil"?',
  ],
  [
    "water measured in one layer of three",
    { outlook: { date: "2024-07-03", layers: [{ name: "topsoil", water: "22 % by volume" }] } },
    'outlook.layers: expected water in every layer of the soil, found none for "pan"; give it, or moistDepth and shareBelow instead',
  ],
  [
    "measured water that no soil holds, in one case",
    {
      outlook: { date: "2024-07-03" },
      "cases[1].outlook": {
        layers: [
          { name: "topsoil", water: "22 % by volume" },
          { name: "pan", water: "22 % by volume" },
          { name: "subsoil", water: "22 gallons" },
        ],
      },
    },
    'cases[1].outlook.layers[2].water: expected water as "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available", found "22 gallons"; say by weight, by volume, available or of available',
  ],
  [
    "more notes than fit",
    { notes: Array.from({ length: 203 }, () => "a note") },
    "notes: expected at most 200 notes, found a list of 203; take 3 out, or join some",
  ],
  [
    "a note that is a number",
    { notes: ["a note", 5] },
    "notes: expected a text of 1 to 2000 letters, or a list of such texts, found a list of 2; write each between quotes, and shorten a long one",
  ],
];

/** What looks like an answer when it is computed in silence: a number without its unit, or one that the trade never sees. */
const ofOddFigures: readonly Row[] = [
  [
    "bare numbers for the yields of strips",
    { evidence: { strips: { cases: ["as it is", "deeper"], yields: [[61, "66 bu/ac"]] } } },
    'evidence.strips.yields[0][0]: expected a yield such as "45 bu/ac" or "2800 kg/ha", found 61; write the unit as bu/ac, lb/ac, kg/ha or t/ha',
  ],
  [
    "yields of strips as texts without a unit",
    { evidence: { strips: { cases: ["as it is", "deeper"], yields: [["61 bu/ac", "66"]] } } },
    'evidence.strips.yields[0][1]: expected a yield such as "45 bu/ac" or "2800 kg/ha", found "66"; write the unit as bu/ac, lb/ac, kg/ha or t/ha',
  ],
  [
    "a difference to detect without a unit",
    {
      evidence: { strips: { cases: ["as it is", "deeper"], yields: [["61 bu/ac", "66 bu/ac"]], detect: 5 } },
    },
    'evidence.strips.detect: expected a yield such as "45 bu/ac" or "2800 kg/ha", found 5; write the unit as bu/ac, lb/ac, kg/ha or t/ha',
  ],
  [
    "a greatest yield without a unit",
    { yield: { cap: 90 } },
    'yield.cap: expected a yield such as "45 bu/ac" or "2800 kg/ha", found 90; write the unit as bu/ac, lb/ac, kg/ha or t/ha',
  ],
  [
    "a slope without a unit",
    { yield: { slope: { low: 4, middle: "5 bu/ac/in", high: "6 bu/ac/in" } } },
    'yield.slope.low: expected yield for each depth of water such as "4.9 bu/ac/in" or "12 kg/ha/mm", found 4; write the unit as bu/ac/in, lb/ac/in or kg/ha/mm',
  ],
  [
    "strips of a year that is a slip of the pen",
    {
      evidence: { strips: { cases: ["as it is", "deeper"], yields: [["61 bu/ac", "66 bu/ac"]], year: 204 } },
    },
    "evidence.strips.year: expected a whole number from 1800 to 2200, found 204; check the number",
  ],
  [
    "counts of a year in words",
    { evidence: { countsYear: "last year" } },
    'evidence.countsYear: expected a whole number from 1800 to 2200, found "last year"; write it without quotes',
  ],
  [
    "a price without anything beside it",
    { money: { price: 4.2 } },
    'money.price: expected a price such as "5 USD/bu" or "0.18 EUR/kg", found 4.2; write amount, currency, and per bu, lb, kg or t',
  ],
  [
    "a price in dollars for nothing",
    { money: { price: "$4.20" } },
    'money.price: expected a price such as "5 USD/bu" or "0.18 EUR/kg", found "$4.20"; write amount, currency, and per bu, lb, kg or t',
  ],
  [
    "the price of a bushel told for a ton",
    { money: { price: "4.20 USD/ton" } },
    'money.price: expected a price from 0.51 to 76 USD/bu, found "4.20 USD/ton", which is 0.12 USD/bu; check the number, and whether it is for a bu, lb, kg or ton',
  ],
  [
    "the price of a ton told for a bushel",
    { money: { price: "150 USD/bu" } },
    'money.price: expected a price from 0.51 to 76 USD/bu, found "150 USD/bu", which is 150 USD/bu; check the number, and whether it is for a bu, lb, kg or ton',
  ],
  [
    "a penetrometer reading without a unit",
    { "soil.layers[1].penetrationResistance": 300 },
    'soil.layers[1].penetrationResistance: expected a penetrometer reading such as "300 psi" or "2.1 MPa", found 300; write the unit as psi, kPa, MPa or bar',
  ],
  [
    "a penetrometer log without units",
    { "soil.penetrometer": { readings: [{ depth: "4 in", resistance: "300" }] } },
    'soil.penetrometer.readings[0].resistance: expected a penetrometer reading such as "300 psi" or "2.1 MPa", found "300"; write the unit as psi, kPa, MPa or bar',
  ],
  [
    "a push probe deeper than the soil",
    { "soil.startingWater": { moistDepth: "80 in", shareBelow: "20 %" } },
    "soil.startingWater.moistDepth: expected a depth within the soil, which ends at 72 in, found 80 in; give the depth at which the probe stopped, or describe the soil deeper",
  ],
  [
    "a push probe deeper than the caliche",
    {
      "soil.restriction": { depth: "30 in", kind: "caliche" },
      "soil.startingWater": { moistDepth: "36 in", shareBelow: "10 %" },
    },
    "soil.startingWater.moistDepth: expected a depth within the soil, which ends at 30 in, found 36 in; give the depth at which the probe stopped, or describe the soil deeper",
  ],
  [
    "roots deeper than the caliche, which is not called rock",
    { "soil.restriction": { depth: "30 in", kind: "caliche" }, "cases[1].rootingDepth": "36 in" },
    "cases[1].rootingDepth: expected a depth above the caliche that soil.restriction states, 30 in, found 36 in; roots end there: give a smaller depth, or mend soil.restriction",
  ],
  [
    "a push probe in the season deeper than the soil",
    { outlook: { date: "2024-07-03", moistDepth: "80 in", shareBelow: "30 %" } },
    "outlook.moistDepth: expected a depth within the soil, which ends at 72 in, found 80 in; give the depth at which the probe stopped, or describe the soil deeper",
  ],
  [
    "a layer without a name",
    { "soil.layers[0].name": undefined },
    "soil.layers[0].name: expected text of 1 to 60 letters, found nothing; give it",
  ],
];

const ofRotations: readonly Row[] = [
  [
    "a total of no meaning of ours",
    { "weather.rainTotalIs": "average" },
    'weather.rainTotalIs: expected one of "each year", "long-run mean", found "average"; choose one of these',
  ],
  [
    "the meaning of a total that is not there",
    {
      "weather.rainTotalIs": "long-run mean",
      "weather.annualRain": undefined,
      "weather.pattern": undefined,
      "weather.monthlyNormals": {
        rain: Array.from({ length: 12 }, () => "1 in"),
        tMax: Array.from({ length: 12 }, () => "70 F"),
        tMin: Array.from({ length: 12 }, () => "40 F"),
      },
    },
    "weather.rainTotalIs: expected a total that it is about, annualRain or seasonRain, found none; give the total, or leave this out",
  ],
  [
    "rows that become a case that is none",
    { rowPositions: [{ case: "as it is", after: "deepr", share: "100 %" }] },
    'rowPositions[0].after: expected the name of a case: "as it is", "deeper", found "deepr"; did you mean "deeper"?',
  ],
  [
    "a day of measuring that is none",
    { "soil.waterMeasured": "Mar 32" },
    'soil.waterMeasured: expected a day of the year such as "Jun 1" or "06-01", found "Mar 32"; give a day that the month has',
  ],
  [
    "a day of measuring, and nothing measured",
    { "soil.waterMeasured": "Mar 12", "soil.startingWater": undefined },
    "soil.waterMeasured: expected water that was measured on it, in soil.startingWater or in the layers, found none; give what was found, or leave the day out",
  ],
  [
    "a day of measuring beside the length of the fallow",
    { "soil.waterMeasured": "Mar 12", "fallow.length": "8 months" },
    "fallow.length: expected no length beside soil.waterMeasured, from which day the run begins, found one; leave one of the two out",
  ],
  [
    "water measured in the growing crop of a rotation",
    { "soil.waterMeasured": "Jul 12", rotation: "every year" },
    "soil.waterMeasured: expected a day between the harvest of grain sorghum and the sowing of grain sorghum, the 240 days before Jun 1, found Jul 12; give the day of a probe between the two; one in the growing crop belongs to outlook",
  ],
  [
    "days not listed by no word of ours",
    { "weather.daysNotListed": "zero" },
    'weather.daysNotListed: expected one of "missing", "dry", found "zero"; choose one of these',
  ],
  [
    "days not listed without a record",
    { "weather.daysNotListed": "dry" },
    "weather.daysNotListed: expected a weather.record that it belongs to, found nothing; name the record, or leave this out",
  ],
  [
    "a rotation by no name of ours",
    { rotation: "every years" },
    'rotation: expected "every year", "wheat-fallow", "wheat-corn-fallow", "wheat-sorghum-fallow", "wheat-sunflower-fallow", or a list with a crop or "fallow" for each year, found "every years"; did you mean "every year"?',
  ],
  [
    "a rotation of no words",
    { rotation: "" },
    'rotation: expected "every year", "wheat-fallow", "wheat-corn-fallow", "wheat-sorghum-fallow", "wheat-sunflower-fallow", or a list with a crop or "fallow" for each year, found ""; choose one of these, or list the years',
  ],
  [
    "an empty rotation",
    { rotation: [] },
    "rotation: expected a list of 1 to 6 years, found an empty list; name the crops in their order",
  ],
  [
    "a rotation of seven years",
    { rotation: ["grain sorghum", "fallow", "fallow", "fallow", "fallow", "fallow", "fallow"] },
    "rotation: expected a list of 1 to 6 years, found a list of 7; a rotation of ours has at most six",
  ],
  [
    "a rotation of fallow only",
    { rotation: ["fallow"] },
    "rotation: expected at least one crop, found only fallow; name the crops between the fallows",
  ],
  [
    "a rotation without the crop that the question is about",
    { rotation: "wheat-corn-fallow" },
    "rotation: expected the crop that the question is about among its crops, grain sorghum, found winter wheat, corn, fallow; add it, or ask about one of these: change crop.name",
  ],
  [
    "a rotation sown before the harvest before it",
    { rotation: ["winter wheat", "grain sorghum"] },
    "rotation[0]: expected winter wheat sown after the harvest of grain sorghum before it, found winter wheat sown Sep 25, grain sorghum ripe Oct 3; put a fallow between, or change the days of sowing",
  ],
  [
    "a misspelt crop in a rotation",
    { rotation: ["grain sorghm", "fallow"] },
    'rotation[0]: expected one of corn, grain sorghum, proso millet, winter wheat, spring wheat, barley, sunflower, field pea, chickpea, canola, perennial grass, found "grain sorghm"; did you mean "grain sorghum"?',
  ],
  [
    "a crop of a rotation that is left open",
    { rotation: ["grain sorghum", "wheat"] },
    'rotation[1]: expected one crop, found "wheat"; say "winter wheat" or "spring wheat"',
  ],
  [
    "a crop of a rotation with a wrong day",
    { rotation: ["grain sorghum", { name: "corn", sowing: "Mai 10x" }] },
    'rotation[1].sowing: expected a day of the year such as "Jun 1" or "06-01", found "Mai 10x"; write the month by name',
  ],
  [
    "a number in a rotation",
    { rotation: ["grain sorghum", 5] },
    'rotation[1]: expected a crop such as "winter wheat", { "name": "corn", "sowing": "May 10" } or "fallow", found 5; name one',
  ],
  [
    "a crop of a rotation without a yield line",
    {
      rotation: [
        "grain sorghum",
        {
          name: "teff",
          sowing: "May 1",
          stageLengths: ["20 days", "20 days", "30 days", "20 days"],
          kcbInitial: 0.15,
          kcbMid: 1,
          kcbEnd: 0.3,
          height: "3 ft",
          maxRootDepth: "4 ft",
        },
      ],
    },
    'rotation[1]: expected a crop with a published yield line, or the crop of crop itself with yield beside it, found "teff"; ask about this crop, or name one that we have numbers of',
  ],
  [
    "another day of the crop in question in a rotation",
    { rotation: ["grain sorghum", { name: "grain sorghum", sowing: "May 1" }] },
    "rotation[1].sowing: expected nothing beside the name of grain sorghum, the crop in question: it takes the numbers of crop, found another number; give it as crop.sowing",
  ],
  [
    "sod in a rotation",
    { rotation: ["grain sorghum", "perennial grass"] },
    'rotation[1]: expected crops that are sown and ripen, found "perennial grass"; leave rotation out for sod',
  ],
  [
    "a fallow beside a rotation",
    { rotation: "every year", fallow: { length: "8 months" } },
    "fallow.length: expected no length beside rotation, which tells how long each fallow is, found one; leave one of the two out",
  ],
  [
    "a fallow of a case beside a rotation",
    { rotation: "every year", "cases[1].fallow": { length: "3 months" } },
    "cases[1].fallow.length: expected no length beside rotation, which tells how long each fallow is, found one; leave one of the two out",
  ],
  [
    "chain without a rotation",
    { chain: { warmUp: 3 } },
    "chain: expected a rotation beside it, found nothing; name the rotation, or leave chain out",
  ],
  [
    "a warm-up below nothing",
    { rotation: "every year", chain: { warmUp: -1 } },
    "chain.warmUp: expected a whole number from 0 to 50, found -1; check the number",
  ],
  [
    "a path of no year",
    { rotation: "every year", chain: { length: 0 } },
    "chain.length: expected a whole number from 1 to 40, found 0; check the number",
  ],
];

const files: Readonly<Record<string, string>> = { "rain.csv": "date,rain_mm\n2020-01-01,0\n2020-01-02,5\n" };
const readText = (path: string, field: string): string =>
  files[path] ?? refuse(field, "a file", path, "check the path");

/** The lines of the InputError; anything else thrown, or nothing, fails the test. */
async function linesOf(act: () => unknown): Promise<string[]> {
  try {
    await act();
  } catch (error) {
    if (error instanceof InputError) return error.message.split("\n");
    throw error;
  }
  throw new Error("it was taken");
}

describe("a scenario that is wrong is refused in plain words", () => {
  test("the scenario the rows change is right", async () => {
    const { name } = await resolveScenario(goodScenario, { fileName: "good.json", readText });
    expect(name).toBe(goodScenario.name);
  });
  test("no row was dropped", () => expect(rows.length + texts.length).toBeGreaterThanOrEqual(109));
  test.each(
    [...rows, ...ofSod, ...ofWords, ...ofOddFigures, ...ofRotations].map(
      ([name, changes, ...lines]) => [name, changes, lines] as const,
    ),
  )("%s", async (_, changes, lines) => {
    expect(
      await linesOf(() => resolveScenario(withChanges(changes), { fileName: "bad.json", readText })),
    ).toEqual(lines);
  });
});

describe("a text that is no scenario is refused with line and column", () => {
  test.each(texts)("%s", async (_, text, line) => {
    expect(
      await linesOf(() => resolveScenario(readJson(text, "f.json"), { fileName: "f.json", readText })),
    ).toEqual([line]);
  });
});
