/**
 * What README.md and DEVELOPERS.md show is what the program does today.
 *
 * An output block stands below a comment that names its command, as one would type it:
 * `<!-- rootfront weather station.csv | head -12 -->`. Read behind the command: `2>&1` adds what goes to
 * stderr, `| head -N` keeps the first N lines. The block repeats the command on its first line, for readers.
 * `npx vitest run tests/unit/docs.test.ts -u` writes the blocks anew.
 */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, test } from "vitest";
import packageFile from "../../package.json" with { type: "json" };
import rootFronts from "../../data-reference/crop-root-front.json" with { type: "json" };
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { commands } from "../../src/cli/commands.ts";
import { flagOption } from "../../src/cli/flags.ts";
import { cropCourse } from "../../src/crop/cropCourse.ts";
import { cropNames, defaultPlan, findCrop } from "../../src/crop/crops.ts";
import { readJson, resolveScenario } from "../../src/scenario/index.ts";
import { weatherFormats } from "../../src/weather/records/readers/index.ts";
import { call, type Called } from "../cli/callCli.ts";
import type { Row } from "../../truth/row.ts";
import { topics } from "../../truth/topics.ts";
import { lindon, normalWeather, sowingIndexOf } from "./crop/siteWeather.ts";

const root = join(import.meta.dirname, "../..");
const read = (name: string): string => readFileSync(join(root, name), "utf8");
/** A paragraph may break anywhere. */
const flowing = (text: string): string => text.replaceAll(/\s+/g, " ");

const readme = read("README.md");
const developers = read("DEVELOPERS.md");

/** The comment, its command line and the fenced block below it. */
const outputBlock = /^<!-- (rootfront .+) -->\n```\n[^]*?^```$/gm;

/** A scenario shown in README.md, or a part of one, below its mark. */
function jsonBlock(mark: string): Record<string, unknown> {
  const [, json = ""] = new RegExp(`<!-- ${mark} -->\\n\`\`\`json\\n([^]*?)^\`\`\`$`, "m").exec(readme) ?? [];
  return readJson(json, "README.md") as Record<string, unknown>;
}

/** None of them names a file. */
const sources = {
  fileName: "README.md",
  readText: (): string => {
    throw new Error("it names no file");
  },
};

describe("the output shown in README.md", () => {
  test("is what the commands print today", async () => {
    const blocks = [...readme.matchAll(outputBlock)];
    expect(blocks.length).toBeGreaterThanOrEqual(5);
    expect(blocks.length).toBe(readme.match(/^<!-- rootfront /gm)?.length);
    let today = readme;
    for (const [block, line] of blocks) {
      const fresh = `<!-- ${line} -->\n\`\`\`\n$ npx ${line}\n${await printed(line!)}\n\`\`\``;
      today = today.replace(block, () => fresh);
    }
    await expect(today).toMatchFileSnapshot(join(root, "README.md"));
  }, 120_000);

  test("the scenario is taken as it stands, and is marked invented", async () => {
    const scenario = await resolveScenario(jsonBlock("scenario"), sources);
    expect(scenario.cases.length).toBe(2);
    expect(scenario.invented).toBe(true);
    for (const { layers, crop } of scenario.cases) {
      const soilMm = layers.at(-1)!.bottomMm;
      expect(soilMm, "its soil goes as deep as its crop roots").toBeGreaterThanOrEqual(crop.maxRootDepthMm);
    }
  });

  test("the evidence, laid over that scenario, resolves", async () => {
    const whole = await resolveScenario({ ...jsonBlock("scenario"), ...jsonBlock("evidence") }, sources);
    expect(whole.evidence?.dig?.groups.length).toBe(2);
    expect(whole.evidence?.counts?.groups.length).toBe(1);
    expect(whole.evidence?.strips?.pairs.length).toBe(3);
    expect(whole.rowPositions?.rowsInAll).toBe(12);
    expect(whole.money?.items.length).toBe(1);
  });

  test("the rotation, laid over that scenario in place of its fallow, resolves; beside it, it is refused", async () => {
    const { fallow, ...scenario } = jsonBlock("scenario");
    const rotated = { ...scenario, ...jsonBlock("rotation") };
    const { rotation } = await resolveScenario(rotated, sources);
    expect(rotation?.entries.map((entry) => entry?.crop ?? null)).toEqual([
      "winter wheat",
      "grain sorghum",
      null,
    ]);
    await expect(resolveScenario({ ...rotated, fallow }, sources)).rejects.toThrow("fallow.length");
  });

  test("the storage in fallow is today's", async () => {
    const [least, most] = await fallowStorage();
    expect(flowing(readme)).toContain(`store ${least} to ${most} % of their fallow's precipitation`);
  });

  test("the count of the scoreboard is today's: a row outside carries its reason, which tests/published/truth.test.ts holds", () => {
    const rows = topics.flatMap(({ file }) => file.rows);
    const fallow = topics.filter(({ isFallow }) => isFallow).flatMap(({ file }) => file.rows);
    const insideOf = (those: readonly Row[]): [number, number, string] => {
      const inside = those.filter(({ outside }) => outside === undefined).length;
      return [inside, those.length, ((100 * inside) / those.length).toFixed(0)];
    };
    const [inside, all, percent] = insideOf(rows);
    const [inFallow, allFallow, percentFallow] = insideOf(fallow);
    expect(flowing(readme)).toContain(
      `Inside: ${inside} of ${all} rows (${percent} %), and ${inFallow} of the ${allFallow} fallow rows (${percentFallow} %).`,
    );
    const without = rows.filter(({ needs }) => needs === undefined).length;
    expect(flowing(readme)).toContain(
      `beside ${all} published or measured figures (${without} without the open data)`,
    );
    expect(flowing(read("CHANGELOG.md"))).toContain(`prints ${all} published or measured figures`);
  });

  test("the paces of the root front are today's", () => {
    const rows = readme.split("\n").filter((line) => line.startsWith("| "));
    const missing = rootFronts.paces.flatMap(({ inputs, expected }) => {
      const [crop, from, to] = inputs as [string, number | null, number | null];
      const end = `| ${expected.toFixed(0)} | ${pace(crop, from, to).toFixed(0)} |`;
      return rows.some((row) => row.startsWith(`| ${crop}`) && row.endsWith(end)) ? [] : [`${crop} ${end}`];
    });
    expect(missing).toEqual([]);
    expect(rootFronts.paces.length).toBe(5);
  });
});

/** Smallest and largest share of the fallow's precipitation stored in any case of the examples that have a fallow, percent. */
async function fallowStorage(): Promise<[number, number]> {
  const lines = [...readme.matchAll(outputBlock)].map(([, line]) => line!.split(" | ")[0]!);
  const examples = [
    ...lines.filter((line) => /^rootfront compare .*--deeper/.test(line) && !line.endsWith("2>&1")),
    ...["sorghum-over-plough-pan", "wheat-after-fallow"].map(
      (name) => `rootfront compare shared/scenarios/${name}.json`,
    ),
  ];
  const percent = (await Promise.all(examples.map(storedPercent))).flat();
  return [Math.min(...percent), Math.max(...percent)];
}

/** As the answer's caution says it, which stands there when little is stored, or else as its JSON has it. */
async function storedPercent(line: string): Promise<number[]> {
  const { out } = await answered(line);
  const [said, least, most = least] =
    /Over the fallow (\d+)(?: to (\d+))? % of the precipitation was stored/.exec(flowing(out)) ?? [];
  if (said !== undefined) return [Number(least), Number(most)];
  const { cases } = JSON.parse((await answered(`${line} --json`)).out) as Comparison;
  return cases.flatMap(({ fallowStorageShare: share }) => (share === null ? [] : Math.round(100 * share)));
}

const answers = new Map<string, Promise<Called>>();

/** What a command line gives, run once for all that is asked of it. */
function answered(line: string): Promise<Called> {
  const args = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
  const answer = answers.get(line) ?? call(root, ...args.slice(1));
  answers.set(line, answer);
  return answer;
}

/** What a command line prints, without the last line's end. */
async function printed(line: string): Promise<string> {
  const [, command, errors, head] = /^(rootfront .+?)( 2>&1)?(?: \| head -(\d+))?$/.exec(line)!;
  const { out, err } = await answered(command!);
  const lines = (errors === undefined ? out : out + err).trimEnd().split("\n");
  if (head !== undefined && lines.length <= Number(head))
    throw new Error(`${line}: there are only ${lines.length} lines`);
  return lines.slice(0, head === undefined ? undefined : Number(head)).join("\n");
}

/** mm a day between two days after sowing, or on the fastest day. */
function pace(crop: string, from: number | null, to: number | null): number {
  const plan = defaultPlan(findCrop(crop));
  const weather = normalWeather(lindon);
  const sowing = sowingIndexOf(plan, weather);
  const { descentMmByDay } = cropCourse(plan, weather, sowing, sowing);
  if (from === null || to === null) return Math.max(...descentMmByDay);
  return descentMmByDay.slice(from, to).reduce((sum, mm) => sum + mm, 0) / (to - from);
}

describe("README.md names", () => {
  test.each(commands.map(({ name }) => name))("the command %s", (name) => {
    expect(readme).toMatch(new RegExp(`^\\| \`${name}[ \`]`, "m"));
  });
  const flags = new Set(commands.flatMap((command) => command.flags));
  test.each([...flags].map((flag) => flagOption(flag).long))("the flag %s", (long) => {
    expect(readme).toContain(`\`${long}`);
  });
  test.each([...weatherFormats])("the weather format %s", (format) => {
    expect(flowing(readme)).toContain(format.replace(/ \(such as.*/, ""));
  });
  test.each([...cropNames])("the crop %s", (crop) => expect(flowing(readme)).toContain(crop));
});

describe.each([
  ["README.md", readme],
  ["DEVELOPERS.md", developers],
  ["CHANGELOG.md", read("CHANGELOG.md")],
])("%s", (name, text) => {
  const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, to]) => to!);
  const inside = links.filter((to) => !/^https?:/.test(to));

  test("every link leads somewhere", () => {
    const broken = inside.filter((to) => {
      const [path, heading] = to.split("#");
      const target = path === "" ? name : path!;
      if (!existsSync(join(root, target))) return true;
      return heading !== undefined && !headings(read(target)).includes(heading);
    });
    expect(broken).toEqual([]);
  });

  test("every file and folder it names is there", () => {
    const folders = readdirSync(root).filter((entry) => statSync(join(root, entry)).isDirectory());
    const named = [...text.matchAll(/`([^`\s]+)`/g)]
      .map(([, code]) => code!)
      .filter((code) => folders.includes(code.split("/")[0]!) && code.includes("/"));
    expect(named.filter((path) => !hasAny(path))).toEqual([]);
  });

  test("every npm script it names is there", () => {
    const scripts = [...text.matchAll(/npm run ([\w:-]+)/g)].map(([, script]) => script!);
    expect(scripts.filter((script) => !Object.hasOwn(packageFile.scripts, script))).toEqual([]);
  });
});

/** As the usual Markdown viewers make anchors of them. */
function headings(markdown: string): string[] {
  return [...markdown.matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
    heading!
      .toLowerCase()
      .replaceAll(/[^\w\s-]/g, "")
      .replaceAll(" ", "-"),
  );
}

/** A path, or with one star in its last part any that fits. */
function hasAny(path: string): boolean {
  const full = join(root, path);
  if (!path.includes("*")) return existsSync(full);
  const [before, after] = full.slice(dirname(full).length + 1).split("*") as [string, string];
  return (
    existsSync(dirname(full)) &&
    readdirSync(dirname(full)).some((entry) => entry.startsWith(before) && entry.endsWith(after))
  );
}

describe("DEVELOPERS.md", () => {
  const ownWords = sourcesOf(join(root, "src"));

  /** Rows of the tables below this heading, by their cells. */
  function rowsBelow(heading: string): string[][] {
    const section = developers.split(/^## /m).find((part) => part.startsWith(heading));
    const rows = (section ?? "").split("\n").filter((line) => line.startsWith("| `"));
    return rows.map((row) => row.split("|").map((cell) => cell.trim()));
  }

  test("every name of the list is used in src, and has a unit and a meaning", () => {
    const rows = rowsBelow("Names");
    expect(rows.length).toBeGreaterThan(50);
    const names = rows.flatMap(([, cell]) => [...cell!.matchAll(/`(\w+)`/g)].map(([, name]) => name!));
    expect(names.filter((name) => !ownWords.has(name))).toEqual([]);
    expect(rows.filter(([, , unit, meaning]) => unit === "" || meaning === "")).toEqual([]);
  });

  test("the map holds every room and every folder of one", () => {
    const map = developers.split(/^## /m).find((part) => part.startsWith("The rooms")) ?? "";
    for (const room of readdirSync(join(root, "src"))) expect(map).toContain(`| src/${room} |`);
    const folders = foldersOf("src", 2).filter((folder) => folder.split("/").length === 3);
    expect(folders.filter((folder) => !map.includes(`\`${folder}/\``))).toEqual([]);
    const page = foldersOf("web", 1).filter((folder) => folder.split("/").length === 2);
    expect(page.filter((folder) => !developers.includes(`\`${folder}/\``))).toEqual([]);
  });

  test("the table of the day names every process", () => {
    const day = developers.split(/^## /m).find((part) => part.startsWith("How a day")) ?? "";
    const season = filesOf(join(root, "src/season")).map((file) => relative(root, file));
    expect(season.filter((file) => !day.includes(`${file}\``))).toEqual([]);
  });

  test("the walk to runoff ends at the line that computes it", () => {
    const [, line] = /last line of `runoffMm` is it: `([^`]+)`/.exec(developers)!;
    expect(read("src/season/runoff.ts")).toContain(line);
  });
});

/** Folders down to so many levels below one, from the root. */
function foldersOf(folder: string, levels: number): string[] {
  if (levels === 0) return [];
  return readdirSync(join(root, folder), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => `${folder}/${name}`)
    .flatMap((one) => [one, ...foldersOf(one, levels - 1)]);
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
}

function sourcesOf(folder: string): Set<string> {
  return new Set(filesOf(folder).flatMap((file) => readFileSync(file, "utf8").match(/\w+/g) ?? []));
}
