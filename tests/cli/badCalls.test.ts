import { linkSync, mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { cropNames } from "../../src/crop/crops.ts";
import { run } from "../../src/cli/main.ts";
import { quoteFound } from "../../src/problem.ts";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
mkdirSync(join(folder, "folder"));
writeJson(folder, "good.json", smallScenario);
writeJson(folder, "no-weather.json", { ...smallScenario, weather: {} });
writeJson(folder, "no-record.json", { ...smallScenario, weather: { record: "gone.csv" } });
writeJson(folder, "two-wrongs.json", { ...smallScenario, site: { latitude: "95 N", elevation: "3 lb" } });
writeJson(folder, "list.json", []);
writeFileSync(join(folder, "empty.json"), "");
writeFileSync(join(folder, "broken.json"), '{\n  "format": "rootfront-scenario/1",\n}');
writeFileSync(join(folder, "latin1.json"), Buffer.from([0x7b, 0x22, 0xe9, 0x22, 0x7d]));
writeFileSync(join(folder, "vast.csv"), "date,rain_mm\n");
truncateSync(join(folder, "vast.csv"), 600 * 2 ** 20); // a hole in it: takes no room on the disk
writeFileSync(join(folder, "nothing.csv"), "a,b\n1,2\n");
const days = Array.from({ length: 40 }, (_, d) =>
  new Date(Date.UTC(2020, 4, 1 + d)).toISOString().slice(0, 10),
);
writeFileSync(
  join(folder, "forty-days.csv"),
  ["date,rain_mm,tmax_C,tmin_C", ...days.map((day) => `${day},1,25,10`)].join("\n"),
);
linkSync(join(folder, "forty-days.csv"), join(folder, "linked.csv"));
symlinkSync(join(folder, "gone-from-here.txt"), join(folder, "nowhere.txt"));
writeFileSync(
  join(folder, "too-large.json"),
  JSON.stringify(smallScenario).replace('"years":12', '"years":1e400'),
);
writeJson(folder, "short.json", { ...smallScenario, weather: { record: "forty-days.csv" } });
writeJson(folder, "short-totals.json", {
  ...smallScenario,
  weather: { record: "forty-days.csv", annualRain: "13 in" },
});

const quick = ["compare", "--texture", "silt loam", "--rain", "13 in", "--crop", "corn", "--deeper", "2 in"];
/** The quick question with another answer to one flag. */
const quickWith = (flag: string, answer: string) => {
  const args = [...quick];
  const at = args.indexOf(flag);
  if (at < 0) return [...args, flag, answer];
  args[at + 1] = answer;
  return args;
};

/** arguments, exit code, all of stderr */
const usage: readonly (readonly [string[], string])[] = [
  [["frobnicate"], "rootfront: unknown command 'frobnicate'"],
  [["comapre"], "rootfront: unknown command 'comapre' (Did you mean compare?)"],
  [["compare", "--sed", "3"], "rootfront: unknown option '--sed' (Did you mean --seed?)"],
  [
    ["compare"],
    'rootfront: compare needs a scenario file, or a quick question: --texture "silt loam" --rain "12..14 in" --crop "grain sorghum" --deeper "2 in"',
  ],
  [
    ["compare", "a.json", "b.json"],
    "rootfront: too many arguments for 'compare'. Expected 1 argument but got 2.",
  ],
  [
    ["compare", "good.json", "--texture", "clay"],
    "rootfront: --texture belongs to the quick question, which has no file; change the file instead",
  ],
  [
    ["compare", "good.json", "--save", "x.json"],
    "rootfront: --save belongs to the quick question, which has no file; change the file instead",
  ],
  [
    ["compare", "good.json", "--units", "imperial"],
    "rootfront: option '--units <system>' argument 'imperial' is invalid. Allowed choices are us, metric.",
  ],
  [
    ["compare", "good.json", "--years", "0"],
    "rootfront: option '--years <n>' argument '0' is invalid. It is a whole number from 1 to 5000.",
  ],
  [
    ["compare", "good.json", "--years", "1e3"],
    "rootfront: option '--years <n>' argument '1e3' is invalid. It is a whole number from 1 to 5000.",
  ],
  [
    ["compare", "good.json", "--seed", "-1"],
    "rootfront: option '--seed <n>' argument '-1' is invalid. It is a whole number from 0 to 4294967295.",
  ],
  [
    ["compare", "good.json", "--years", "3", "--years", "5"],
    "rootfront: option '--years <n>' argument '5' is invalid. It was given before: give it once.",
  ],
  [
    ["compare", "good.json", "--units", "us", "--units", "us"],
    "rootfront: option '--units <system>' argument 'us' is invalid. It was given before: give it once.",
  ],
  [
    ["compare", "good.json", "--rain", "12..14"],
    "rootfront: option '--rain <totals>' argument '12..14' is invalid. Its unit is missing: 13 in or 330 mm.",
  ],
  [
    quickWith("--deeper", "2"),
    "rootfront: option '--deeper <depth>' argument '2' is invalid. Its unit is missing: 2 in or 5 cm.",
  ],
  [
    quickWith("--deeper", "+2 1/2"),
    "rootfront: option '--deeper <depth>' argument '+2 1/2' is invalid. Its unit is missing: 2 in or 5 cm.",
  ],
  [
    ["weather", "forty-days.csv", "--elevation", "3300"],
    "rootfront: option '--elevation <height>' argument '3300' is invalid. Its unit is missing: 3300 ft or 1000 m.",
  ],
  [
    ["weather", "forty-days.csv", "--from", "5/1/2020"],
    `rootfront: option '--from <date>' argument '5/1/2020' is invalid. It is a date such as "2020-06-01": write year, month and day, in that order.`,
  ],
  [
    ["weather", "forty-days.csv", "--max-gap-days", "-1"],
    "rootfront: option '--max-gap-days <n>' argument '-1' is invalid. It is a whole number from 0 to 366.",
  ],
  [quickWith("--save", "-"), 'rootfront: --save writes a file: name one such as "my-field.json"'],
  [
    [...quick, "--save", "both.json", "--out", "./folder/../both.json"],
    "rootfront: --save and --out name the same file; name two",
  ],
  [["compare", "good.json", "--out"], "rootfront: option '-o, --out <file>' argument missing"],
  [["ledger"], "rootfront: missing required argument 'file'"],
  [["ledger", "good.json", "--run", "1", "--year", "2001"], "rootfront: give --run or --year, not both"],
  [["weather"], "rootfront: missing required argument 'file'"],
  [
    ["weather", "forty-days.csv", "--weather-units", "inches"],
    "rootfront: option '--weather-units <units>' argument 'inches' is invalid. Allowed choices are metric, us, tenths.",
  ],
  [
    ["compare", "good.json", "--rain", "1".repeat(100_000)],
    "rootfront: --rain: expected at most 5000 letters, found 100000; shorten it, or put it into a file",
  ],
  [
    ["check", "1".repeat(100_000)],
    "rootfront: expected at most 5000 letters, found 100000; shorten it, or put it into a file",
  ],
  [["check"], "rootfront: missing required argument 'file'"],
  [["new", "a.json", "b.json"], "rootfront: too many arguments for 'new'. Expected 1 argument but got 2."],
  [
    quickWith("--pattern", "wet"),
    "rootfront: option '--pattern <pattern>' argument 'wet' is invalid. Allowed choices are summer-peak, winter-peak, even.",
  ],
];

const wrongInput: readonly (readonly [string[], string])[] = [
  [["compare", "gone.json"], "gone.json: expected a file, found no such file; check the path"],
  [["compare", "good.json/x"], "good.json/x: expected a file, found no such file; check the path"],
  [["compare", "folder"], "folder: expected a file, found a folder; name a file in it"],
  [
    ["compare", "latin1.json"],
    "latin1.json: expected a text file in UTF-8, found other bytes; save the file as UTF-8 text",
  ],
  [
    ["compare", "empty.json"],
    'empty.json line 1, column 1: expected a value such as "14 in", 12, true, [ or {, found the end of the file; put text, and a quantity with its unit, between double quotes',
  ],
  [
    ["compare", "broken.json"],
    'broken.json line 3, column 1: expected a key between double quotes, such as "name", found "}"; take out the comma before it',
  ],
  [
    ["compare", "list.json"],
    'list.json: expected a group of keys in braces, such as { "format": ... }, found an empty list; write it between { and }',
  ],
  [
    ["compare", "no-weather.json"],
    "no-weather.json: weather: expected weather.record, weather.monthlyNormals, or weather.pattern with weather.annualRain, found none of them; name a station record, or give the year's rain and its pattern",
  ],
  [
    ["compare", "no-record.json"],
    'no-record.json: weather.record: expected a file, found no such file at "gone.csv"; check the path',
  ],
  [
    ["compare", "two-wrongs.json"],
    `two-wrongs.json: site.latitude: expected a latitude from 66 S to 66 N, found "95 N"; check the number\ntwo-wrongs.json: site.elevation: expected a height such as "3300 ft" or "1000 m", found "3 lb"; write the unit as ft or m`,
  ],
  [
    ["compare", "short.json"],
    "short.json: weather: expected a record of at least one whole run, from sowing of grain sorghum to maturity (at most 144 days), found 2020-05-01 to 2020-06-09; give a longer record",
  ],
  [
    ["compare", "short-totals.json"],
    "short-totals.json: weather: expected a record of at least one whole run, from sowing of grain sorghum to maturity (at most 144 days), found 2020-05-01 to 2020-06-09; give a longer record",
  ],
  [
    ["compare", "good.json", "--rain", "13 lb"],
    '--rain: expected rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"], found "13 lb"; write the unit as in, ft, mm, cm or m',
  ],
  [
    ["compare", "good.json", "--rain", "14..12 in"],
    '--rain: expected rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"], found "14..12 in"; put the smaller total first',
  ],
  [
    ["compare", "good.json", "--station", "X"],
    "--station: expected a weather.record that it belongs to, found nothing; name the record, or leave this out",
  ],
  [
    ["compare", "good.json", "--out", "folder"],
    '--out: expected a file that can be written, found the folder "folder"; name a file',
  ],
  [
    ["compare", "good.json", "--out", "good.json"],
    '--out: expected a file that nothing is read from, found "good.json", which the answer is made of; name another',
  ],
  [
    ["compare", "short.json", "--out", "forty-days.csv"],
    '--out: expected a file that nothing is read from, found "forty-days.csv", which the answer is made of; name another',
  ],
  [
    ["weather", "forty-days.csv", "--out", "linked.csv"],
    '--out: expected a file that nothing is read from, found "linked.csv", which the answer is made of; name another',
  ],
  [
    ["weather", "short.json", "--out", "forty-days.csv"],
    '--out: expected a file that nothing is read from, found "forty-days.csv", which the answer is made of; name another',
  ],
  [
    ["compare", "good.json", "--out", "/dev/null"],
    '--out: expected a file that can be written, found "/dev/null", which is no ordinary file; name a file, or "-" for standard output',
  ],
  [
    ["compare", "good.json", "--out", "nowhere.txt"],
    '--out: expected a file that can be written, found "nowhere.txt", a link that leads nowhere; name a file',
  ],
  [
    quickWith("--save", "good.json"),
    '--save: expected a file that does not exist yet, found "good.json", which does; name another, or delete it first',
  ],
  [
    ["weather", "forty-days.csv", "--from", "2021-01-01"],
    '--from: expected a day within the record, 2020-05-01 to 2020-06-09, found "2021-01-01"; choose days that the record holds',
  ],
  [["compare", ""], "file: expected a file, found an empty path; name a file"],
  [
    quickWith("--rain", "1e400 in"),
    '--rain: expected rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"], found "1e400 in"; give a smaller number: this one is too large',
  ],
  [
    ["compare", "too-large.json"],
    "too-large.json: ensemble.years: expected a whole number from 1 to 5000, found a number too large; give a smaller number",
  ],
  [
    ["compare", "good.json", "--out", "gone/x.txt"],
    '--out: expected a file that can be written, found no folder for "gone/x.txt"; make the folder first, or name another',
  ],
  [
    ["compare", "good.json", "--out", ""],
    "--out: expected a file that can be written, found an empty path; name a file",
  ],
  [
    ["compare", "--texture", "silt loam"],
    '--rain: expected an answer such as "12..14 in", found nothing; add --rain "12..14 in"',
  ],
  [
    quickWith("--texture", "silty mud"),
    '--texture: expected a USDA texture class (sand, loamy sand, sandy loam, loam, silt loam, silt, sandy clay loam, clay loam, silty clay loam, sandy clay, silty clay, clay), found "silty mud"; name one of these, or give sand and clay in percent',
  ],
  [
    quickWith("--crop", "wheat"),
    '--crop: expected one crop, found "wheat"; say "winter wheat" or "spring wheat"',
  ],
  [
    quickWith("--crop", "bananas"),
    `--crop: expected one of ${cropNames.join(", ")}, found "bananas"; name one of these, or give the crop by its numbers`,
  ],
  [
    quickWith("--deeper", "2 lb"),
    '--deeper: expected a rooting depth such as "34 in", or "+2 in" against the first case, found "+2 lb"; write the unit as in, ft, mm, cm or m',
  ],
  [
    quickWith("--rain", "0.5 in"),
    '--rain: expected rainfall totals from 1 to 197 in (25 to 5000 mm), found "0.5 in"; check the number and its unit',
  ],
  [
    quickWith("--sowing", "6/1"),
    '--sowing: expected a day of the year such as "Jun 1" or "06-01", found "6/1"; write the month by name',
  ],
  [
    quickWith("--latitude", "95"),
    `--latitude: expected a latitude from 66 S to 66 N, found "95"; check the number`,
  ],
  [
    quickWith("--save", "gone/q.json"),
    '--save: expected a file that can be written, found no folder for "gone/q.json"; make the folder first, or name another',
  ],
  [
    ["ledger", "good.json", "--run", "13"],
    "--run: expected a run from 1 to 12, found 13; take one of these, or ask for more with --years",
  ],
  [
    ["ledger", "good.json", "--year", "1999"],
    '--year: expected a year that a run is sown in, 2001 to 2012, found 1999; take one of these, or see with "rootfront weather" what the record holds',
  ],
  [
    ["weather", "vast.csv"],
    "vast.csv: expected a file below 512 MB, found one of 600 MB; take out the years, stations or columns that are not needed",
  ],
  [["weather", "gone.csv"], "gone.csv: expected a file, found no such file; check the path"],
  [
    ["weather", "nothing.csv"],
    'nothing.csv: expected a daily weather record in one of these formats: NOAA GHCN-Daily "daily summaries" CSV; NOAA GHCN-Daily, fixed width (.dly); NOAA USCRN daily01, fixed width; NOAA USCRN daily01, CSV; NASA POWER daily CSV; gridMET daily columns; plain CSV with named columns and units (such as date,rain_mm,tmax_C,tmin_C), found "a,b"; give one of them, or name the columns as in the last',
  ],
  [
    ["weather", "good.json"],
    "good.json weather.record: expected the path of a weather record, found nothing; name one, or call this on the record itself",
  ],
  [
    ["weather", "no-record.json"],
    'no-record.json: weather.record: expected a file, found no such file at "gone.csv"; check the path',
  ],
  [
    ["weather", "forty-days.csv", "--latitude", "95"],
    '--latitude: expected a latitude from 66 S to 66 N, such as "38.5 N", found "95"; check the number',
  ],
  [
    ["weather", "forty-days.csv", "--latitude", "38 N", "--elevation", "3 lb"],
    '--elevation: expected a height such as "3300 ft" or "1000 m", found "3 lb"; write the unit as ft or m',
  ],
  ...["6100 m", "-460 m", "20,000 ft", "1e300 m"].map(
    (height) =>
      [
        ["weather", "forty-days.csv", "--latitude", "38 N", "--elevation", height],
        `--elevation: expected -1480 to 19,700 ft (-450 to 6000 m), found "${height}"; check the number and its unit`,
      ] as [string[], string],
  ),
  ...[`${"a".repeat(256)}`, `${"a".repeat(300)}.txt`, `${"\u00e9".repeat(128)}`, `${"a/".repeat(2300)}b`].map(
    (path): [string[], string] => [
      ["weather", "forty-days.csv", "--out", path],
      `--out: expected a file that can be written, found a name that is too long, ${quoteFound(path)}; give it at most 255 bytes`,
    ],
  ),
  [
    ["new", `${"a".repeat(300)}.json`],
    `file: expected a file that can be written, found a name that is too long, "${"a".repeat(57)}..."; give it at most 255 bytes`,
  ],
  [
    quickWith("--save", `${"a".repeat(300)}.json`),
    `--save: expected a file that can be written, found a name that is too long, "${"a".repeat(57)}..."; give it at most 255 bytes`,
  ],
  [
    ["check", "a".repeat(300)],
    `file: expected a file, found a name that is too long, "${"a".repeat(57)}..."; check the path`,
  ],
  [
    ["check", "broken.json"],
    'broken.json line 3, column 1: expected a key between double quotes, such as "name", found "}"; take out the comma before it',
  ],
  [
    ["new", "good.json"],
    "good.json: expected a file that does not exist yet, found one that does; name another, or delete it first",
  ],
  [["new", "folder"], 'folder: expected a file that can be written, found the folder "folder"; name a file'],
];

describe("called as it cannot be: exit 2", () => {
  test.each(usage)("%j", async (args, line) => {
    expect(await call(folder, ...args)).toEqual({ code: 2, out: "", err: `${line}\n` });
  });
  test("without a command the help goes to stderr", async () => {
    const { code, out, err } = await call(folder);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^Usage: rootfront/);
  });
});

describe("wrong input, a line a problem: exit 1, or 2 where it stands on the command line itself", () => {
  test.each(wrongInput)("%j", async (args, lines) => {
    const code = lines.startsWith("--") ? 2 : 1;
    expect(await call(folder, ...args)).toEqual({ code, out: "", err: `${lines}\n` });
  });
});

test("a fault of ours is one line and exit 3, never a stack trace", async () => {
  let err = "";
  const code = await run(["new"], {
    stdout: {
      write: () => {
        throw new TypeError("something broke\n    at somewhere");
      },
    },
    stderr: { write: (text) => (err += text) },
    cwd: folder,
    isTerminal: false,
  });
  expect(code).toBe(3);
  expect(err).toBe(
    "rootfront: a fault of ours (something broke); please report it with the command and the file that led here\n",
  );
});
