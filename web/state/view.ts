import { batch, effect, signal, type Signal } from "@preact/signals";
import type { Units } from "../../src/quantity/kinds.ts";
import { mostRainTotals, yearsWithin } from "../../src/scenario/fields/facts/limits.ts";
import { turnPage } from "./scroll.ts";

/** What is looked at, apart from the scenario: it stands in the address, so that it can be gone back to and passed on. */

export const viewNames = ["pit", "answer", "inputs", "field", "teach", "seasons", "keep"] as const;
export type ViewName = (typeof viewNames)[number];

/** In the order of the tabs. */
export const viewTitles: Readonly<Record<ViewName, string>> = {
  pit: "Pit wall",
  answer: "Answer",
  inputs: "Inputs",
  field: "In the field",
  teach: "Teach",
  seasons: "Seasons",
  keep: "Keep & share",
};

/** What the first key press on a page offers. */
export const skipWords: Readonly<Record<ViewName, string>> = {
  pit: "Skip to the pit wall",
  answer: "Skip to the answer",
  inputs: "Skip to the inputs",
  field: "Skip to what was measured in the field",
  teach: "Skip to the lesson",
  seasons: "Skip to the seasons",
  keep: "Skip to keeping and sharing",
};

/** The leaves of "In the field". */
export const leafNames = ["dig", "samples", "counts", "strips", "water", "rows", "money"] as const;
export type LeafName = (typeof leafNames)[number];

/** The cards of "Inputs", in order. */
export const cardNames = [
  "scenario",
  "site",
  "soil",
  "start",
  "weather",
  "crop",
  "surface",
  "cases",
  "yield",
  "runs",
  "file",
] as const;
export type CardName = (typeof cardNames)[number];

export type ThemeChoice = "auto" | "light" | "dark";

export const view = signal<ViewName>("answer");
export const units = signal<Units>("us");
export const theme = signal<ThemeChoice>("auto");
/** The run on the pit wall, from 0; null = one near the middle. */
export const chosenRun = signal<number | null>(null);
/** The rainfall total looked at, an index of the scenario's totals; null = the middle one. */
export const chosenTotal = signal<number | null>(null);
/** Day of the playhead, counted from the first day shown; null = the last. */
export const playDay = signal<number | null>(null);

/** The leaf of "In the field" that is read; stays so while other views are looked at. */
export const openLeaf = signal<LeafName>("dig");
/** The one open card of "Inputs"; null = all are closed. */
export const openCard = signal<CardName | null>(null);

/** One signal in the address: how it is written there, and how what is found there is checked. */
interface AddressEntry {
  readonly key: string;
  /** The only view whose address has it; the others leave it as it is. */
  readonly of?: ViewName;
  /** Null = left out, as it is the usual. */
  readonly write: () => string | null;
  /** Takes what stands in the address; what is not as it should be counts as left out. */
  readonly read: (text: string | null) => void;
}

const addressTable: readonly AddressEntry[] = [
  oneOf("units", units, ["us", "metric"], "us"),
  oneOf("theme", theme, ["auto", "light", "dark"], "auto"),
  counted("run", chosenRun, yearsWithin[1], 1),
  counted("total", chosenTotal, mostRainTotals, 1),
  counted("day", playDay, 4000, 0),
  {
    key: "leaf",
    of: "field",
    write: () => openLeaf.value,
    read: (text) => {
      openLeaf.value = leafNames.find((name) => name === text) ?? openLeaf.peek();
    },
  },
  {
    key: "card",
    of: "inputs",
    write: () => openCard.value,
    read: (text) => {
      openCard.value = cardNames.find((name) => name === text) ?? null;
    },
  },
];

function oneOf<T extends string>(key: string, kept: Signal<T>, words: readonly T[], usual: T): AddressEntry {
  return {
    key,
    write: () => (kept.value === usual ? null : kept.value),
    // An address that does not say leaves the choice of the one who looks.
    read: (text) => {
      kept.value = words.find((word) => word === text) ?? kept.peek();
    },
  };
}

/** A whole number; in the address it is counted from `first`, as people do. */
function counted(key: string, kept: Signal<number | null>, most: number, first: number): AddressEntry {
  return {
    key,
    write: () => (kept.value === null ? null : String(kept.value + first)),
    read: (text) => {
      const found = text !== null && /^\d{1,5}$/.test(text) ? Number(text) - first : null;
      kept.value = found !== null && found >= 0 && found < most ? found : null;
    },
  };
}

/**
 * `#/answer?units=metric&run=12`
 *
 * @param within a leaf or a card of that view, in place of the one that is open
 */
export function addressOf(
  name: ViewName = view.value,
  within: { readonly leaf?: LeafName; readonly card?: CardName } = {},
): string {
  const query = new URLSearchParams();
  for (const { key, of = name, write } of addressTable) {
    const text = of === name ? write() : null;
    if (text !== null) query.set(key, text);
  }
  for (const [key, text] of Object.entries(within)) query.set(key, text);
  const said = query.toString();
  return `#/${name}${said === "" ? "" : `?${said}`}`;
}

/** Reads an address that may come from anywhere; what it does not say, or says wrongly, is as usual, or for units and theme as it was. */
export function readAddress(hash: string): void {
  const [route = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  const said = new URLSearchParams(query);
  // At once: nobody is to see half of an address, nor to be asked for a season that half of it means.
  batch(() => {
    view.value = viewNames.find((name) => name === route) ?? "answer";
    for (const { key, of = view.value, read } of addressTable) if (of === view.value) read(said.get(key));
  });
}

const preferencesKey = "rootfront.preferences";

/** Units and theme last from visit to visit; the address has the last word. */
export function followAddress(): void {
  const usual = storedPreferences();
  const wanted = new URLSearchParams(location.hash.split("?")[1] ?? "");
  readAddress(location.hash);
  if (!wanted.has("units") && usual.get("units") === "metric") units.value = "metric";
  const keptTheme = usual.get("theme");
  if (!wanted.has("theme") && (keptTheme === "light" || keptTheme === "dark")) theme.value = keptTheme;

  addEventListener("hashchange", () => {
    // Another kind of fragment, such as a link with a scenario in it, is read elsewhere.
    if (location.hash.startsWith("#/") && location.hash !== addressOf()) readAddress(location.hash);
  });
  let shown = pageShown();
  effect(() => {
    const address = addressOf();
    const page = pageShown();
    const isOther = page !== shown;
    shown = page;
    if (address === location.hash) return;
    // Another view or leaf is a step back in the browser; another day of the same view, or another card, is not.
    if (isOther) turnPage(address);
    else globalThis.history.replaceState(globalThis.history.state, "", address);
  });
  effect(() => {
    storePreferences(new URLSearchParams({ units: units.value, theme: theme.value }));
  });
}

function pageShown(): string {
  return view.value === "field" ? `field ${openLeaf.value}` : view.value;
}

function storedPreferences(): URLSearchParams {
  try {
    return new URLSearchParams(localStorage.getItem(preferencesKey) ?? "");
  } catch {
    return new URLSearchParams(); // storage is switched off
  }
}

function storePreferences(kept: URLSearchParams): void {
  try {
    localStorage.setItem(preferencesKey, kept.toString());
  } catch {
    // Storage is switched off or full: the choice lasts while the page is open.
  }
}
