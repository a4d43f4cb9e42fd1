/** Rooms import downward only, and imports never go round in a circle, by value or by type. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, test } from "vitest";

const root = join(import.meta.dirname, "../..");

/** Lowest first: a room may import itself and what stands before it. Files beside the rooms may be imported by all. */
const rooms: Readonly<Record<string, readonly string[]>> = {
  src: [
    "quantity",
    "statistics",
    "soil",
    "weather",
    "crop",
    "season",
    "evidence",
    "scenario",
    "answer",
    "drawing",
    "report",
    "cli",
  ],
  web: ["style", "offline", "state", "worker", "pictures", "forms", "views", "shell"],
};

/** src/index.ts, web/app.tsx and their like stand above all rooms: they bring them together. */
const above = new Set(["src/index.ts", "web/app.tsx", "web/page.tsx", "web/main.ts"]);

interface Import {
  readonly from: string;
  readonly to: string;
}

const filesOf = (tree: string): string[] =>
  readdirSync(join(root, tree), { recursive: true, encoding: "utf8" })
    .map((name) => join(tree, name))
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith(".d.ts"));

const importsOf = (file: string): Import[] =>
  [...readFileSync(join(root, file), "utf8").matchAll(/(?:from|import|import\()\s*"(\.[^"?]+)/g)].map(
    ([, path]) => ({
      from: file,
      to: relative(root, join(root, dirname(file), path!)),
    }),
  );

const files = Object.keys(rooms).flatMap(filesOf);
const imports = files.flatMap(importsOf).filter(({ to }) => files.includes(to));
const roomOf = (file: string): [tree: string, room: string | null] => {
  const [tree, room, ...rest] = file.split("/") as [string, string, ...string[]];
  return [tree, rest.length === 0 ? null : room];
};

function isDownward({ from, to }: Import): boolean {
  if (above.has(from)) return true;
  if (above.has(to)) return false;
  const [fromTree, fromRoom] = roomOf(from);
  const [toTree, toRoom] = roomOf(to);
  if (fromTree !== toTree) return toTree === "src";
  if (toRoom === null) return true;
  if (fromRoom === null) return false;
  const order = rooms[fromTree]!;
  return order.indexOf(toRoom) <= order.indexOf(fromRoom);
}

/** The first circle found from each file that is on one, as a line. */
function circles(all: readonly Import[]): string[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of all) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const found: string[] = [];
  const walk = (file: string, path: readonly string[]): void => {
    if (path.includes(file)) {
      found.push([...path.slice(path.indexOf(file)), file].join(" -> "));
      return;
    }
    if (done.has(file)) return;
    for (const one of next.get(file) ?? []) walk(one, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return found;
}

describe("rooms", () => {
  test("every room has its place in the order", () => {
    const known = Object.entries(rooms).flatMap(([tree, names]) => names.map((name) => `${tree}/${name}`));
    const met = new Set(
      files.map(roomOf).flatMap(([tree, room]) => (room === null ? [] : [`${tree}/${room}`])),
    );
    expect([...met].filter((room) => !known.includes(room))).toEqual([]);
  });

  test("import downward only", () => {
    expect(imports.length).toBeGreaterThan(1000);
    expect(imports.filter((one) => !isDownward(one)).map(({ from, to }) => `${from} imports ${to}`)).toEqual(
      [],
    );
  });

  test("no file imports itself by way of others", () => {
    expect(circles(imports)).toEqual([]);
  });

  test("no folder of code or tests holds more than 20 files beside its folders", () => {
    const counts = new Map<string, number>();
    for (const file of [...files, ...filesOf("tests")])
      counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > 20)).toEqual([]);
  });
});
