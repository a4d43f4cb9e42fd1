import { signal } from "@preact/signals";
import type { SortKey } from "./rows.ts";

/** How the seasons lie; kept while the page is open, so that one comes back from the pit wall to the same order. */
export const sortKey = signal<SortKey>("water");
export const sortWay = signal<"ascending" | "descending">("descending");
export const everyRun = signal(false);

/** Seasons drawn at once: light enough for a phone. */
export const seasonsAtOnce = 40;
export const seasonsShown = signal(seasonsAtOnce);
