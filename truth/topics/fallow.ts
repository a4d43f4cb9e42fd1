/** Fallow storage of published trials. Each row's file entry says which fallows it runs and what it takes of them. */
import file from "../../data-reference/scoreboard/fallow.json" with { type: "json" };
import { fallowOf, type Fallow, type FallowCase, type FallowPart } from "../fallowRun.ts";
import type { Row, Topic } from "../row.ts";
import { mean } from "../water.ts";

interface FallowRow extends Row {
  readonly run: {
    /** More than one: their mean. */
    readonly of: readonly FallowCase[];
    readonly less?: FallowCase;
    readonly take: keyof typeof taken | keyof typeof compared;
    /** Which part of the fallow; left out: all of it. */
    readonly part?: number;
  };
}

type Take = (fallow: Fallow, part: FallowPart) => number;

const taken = {
  percent: (_, part) => part.percent,
  gainMm: (_, part) => part.gainMm,
  availableMm: ({ availableAtSowingMm }) => availableAtSowingMm,
  "share of gain in part": ({ whole }, part) => (100 * part.gainMm) / whole.gainMm,
} satisfies Record<string, Take>;

const compared = {
  "share of gain below 2 ft": (a: Fallow, b: Fallow) =>
    (100 * (a.gainBelowTwoFtMm - b.gainBelowTwoFtMm)) / (a.whole.gainMm - b.whole.gainMm),
  "relative percent": (a: Fallow, b: Fallow) => 100 * (a.whole.percent / b.whole.percent - 1),
};

const rows = file.rows as unknown as readonly FallowRow[];

export const fallow: Topic = {
  file: { title: file.title, rows },
  isFallow: true,
  async ours(openData) {
    const ours: Record<string, number> = {};
    for (const { id, needs, run } of rows) {
      if (needs === undefined || openData !== null) ours[id] = await valueOf(run, openData);
    }
    return ours;
  },
};

async function valueOf({ of, less, take, part }: FallowRow["run"], openData: string | null): Promise<number> {
  const runs = await Promise.all(of.map((one) => fallowOf(one, openData)));
  const other = less === undefined ? null : await fallowOf(less, openData);
  const partOf = (one: Fallow) => (part === undefined ? one.whole : one.parts[part]!);
  if (take === "share of gain below 2 ft" || take === "relative percent") {
    if (other === null) throw new Error(`${take} compares two fallows`);
    return compared[take](runs[0]!, other);
  }
  const value = (one: Fallow) => taken[take](one, partOf(one));
  return mean(runs.map(value)) - (other === null ? 0 : value(other));
}
