import { lookUp } from "../../lookUp.ts";
import { quoteFound, type Problem } from "../../problem.ts";
import { nearestName } from "../../nearestName.ts";

/** What a field of the file found wrong. It travels through zod as the text of its message. */
export type Fault =
  | { readonly kind: "wrong"; readonly expected: string; readonly mend: string; readonly found?: string }
  | { readonly kind: "keys"; readonly known: readonly string[] }
  /** What one of several shapes, the one meant, found wrong inside. */
  | { readonly kind: "inside"; readonly issues: readonly Issue[] };

export function encodeFault(fault: Fault): string {
  return JSON.stringify(fault);
}

export type Path = readonly PropertyKey[];

export interface Issue {
  readonly code?: string | undefined;
  readonly path: Path;
  readonly message: string;
  readonly keys?: readonly string[];
}

/** What people call things that have another name here. */
const calledElsewhere: Readonly<Record<string, string>> = {
  stones: "gravelVolume",
  gravel: "gravelVolume",
  rocks: "gravelVolume",
  density: "bulkDensity",
  depth: "bottom",
  om: "organicMatter",
  humus: "organicMatter",
  fc: "fieldCapacity",
  pwp: "wiltingPoint",
  rain: "annualRain",
  residue: "residueCover",
};

/** Nobody mends more faults than this at a time; a file can have one for each of its letters. Ours. */
const mostTold = 100;

/** The problems of a file in the order they stand in it, the first hundred of them. */
export function problemsOf(issues: readonly Issue[], raw: unknown): Problem[] {
  const orders: KeyOrders = new Map();
  const all = issues
    .flatMap((issue) => problemsOfIssue(issue, raw))
    .map((one, order) => ({ ...one, place: placeIn(raw, one.path, orders), order }))
    .sort((a, b) => comparePlaces(a.place, b.place) || a.order - b.order)
    .map(({ problem }) => problem);
  if (all.length <= mostTold) return all;
  return [
    ...all.slice(0, mostTold),
    {
      field: "scenario",
      expected: "fewer faults than can be told",
      found: `${all.length - mostTold} more`,
      mend: "mend the ones above first",
    },
  ];
}

function problemsOfIssue(
  { path, message, keys = [] }: Issue,
  raw: unknown,
): { path: Path; problem: Problem }[] {
  const fault = JSON.parse(message) as Fault;
  if (fault.kind === "inside") {
    return fault.issues.flatMap((one) => problemsOfIssue({ ...one, path: [...path, ...one.path] }, raw));
  }
  if (fault.kind === "wrong") {
    const { expected, mend, found = quoteFound(at(raw, path)) } = fault;
    return [{ path, problem: { field: sayPath(path), expected, found, mend } }];
  }
  return keys.map((key) => {
    if (isCropOfCase([...path, key]))
      return {
        path: [...path, key],
        problem: {
          field: sayPath([...path, key]),
          expected:
            "one crop for all cases: two crops are two yield lines, each with its own place and errors",
          found: quoteFound(at(raw, [...path, key])),
          mend: "leave it out, and ask the quick question with each crop",
        },
      };
    const meant = lookUp(calledElsewhere, key.toLowerCase());
    const near = meant !== undefined && fault.known.includes(meant) ? meant : nearestName(key, fault.known);
    return {
      path: [...path, key],
      problem: {
        field: sayPath([...path, key]),
        expected: near === null ? `one of the keys ${fault.known.join(", ")}` : "a key that belongs here",
        found: quoteFound(key),
        mend: near === null ? "leave it out" : `did you mean "${near}"?`,
      },
    };
  });
}

/** A file that would compare two crops names one in a case. */
function isCropOfCase(path: Path): boolean {
  return path.length === 4 && path[0] === "cases" && path[2] === "crop" && path[3] === "name";
}

/** `soil.layers[1].bulkDensity`; the whole file is `scenario`. */
export function sayPath(path: Path): string {
  if (path.length === 0) return "scenario";
  return path
    .map((part, i) => {
      if (typeof part === "number") return `[${part}]`;
      const name = String(part);
      if (!/^[\w$]{1,60}$/.test(name)) return `[${quoteFound(name)}]`;
      return i === 0 ? name : `.${name}`;
    })
    .join("");
}

export function at(raw: unknown, path: Path): unknown {
  let here = raw;
  for (const part of path) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, part)) return undefined;
    here = (here as Record<PropertyKey, unknown>)[part];
  }
  return here;
}

/** Where each key stands in its group: worked out once, as a group may have many. */
type KeyOrders = Map<object, ReadonlyMap<string, number>>;

/** Where a path stands in the file, level by level; what is missing comes last in its group. */
function placeIn(raw: unknown, path: Path, orders: KeyOrders): number[] {
  return path.map((part, depth) => {
    if (typeof part === "number") return part;
    const group = at(raw, path.slice(0, depth));
    if (typeof group !== "object" || group === null) return Infinity;
    let order = orders.get(group);
    if (order === undefined) {
      order = new Map(Object.keys(group).map((key, index) => [key, index]));
      orders.set(group, order);
    }
    return order.get(String(part)) ?? Infinity;
  });
}

function comparePlaces(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [left = 0, right = 0] = [a[i], b[i]];
    if (left !== right) return left < right ? -1 : 1;
  }
  return a.length - b.length;
}
