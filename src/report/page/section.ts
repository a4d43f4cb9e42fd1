import type { ReportInput } from "./reportInput.ts";

/** A part of the report: its heading and what stands under it, as markup; null where there is nothing to tell. */
export type Section = (input: ReportInput) => { readonly heading: string; readonly body: string } | null;
