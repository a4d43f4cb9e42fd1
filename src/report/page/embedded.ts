/** The scenario a report was made from, held in the report itself so that the one file is enough to go on with. */
export interface KeptScenario {
  /** As it was written. */
  readonly scenario: unknown;
  /** Text of each file it names, by the name it uses. */
  readonly attachments: Readonly<Record<string, string>>;
}

/** Files beside the scenario are held too while all of them together have no more letters than this. */
export const largestEmbedded = 1_500_000;

const id = "rootfront-scenario";
const opens = `<script type="application/json" id="${id}">`;
const closes = "</script>";

/** Names of files too large to go along. */
export function leftOutOf({ attachments }: KeptScenario): string[] {
  const letters = Object.values(attachments).reduce((sum, text) => sum + text.length, 0);
  return letters > largestEmbedded ? Object.keys(attachments) : [];
}

/** A block of data, not of code: no browser runs it, and no `<` is left in it that could end it. */
export function embedded(kept: KeptScenario): string {
  const attachments = leftOutOf(kept).length > 0 ? {} : kept.attachments;
  const json = JSON.stringify({ scenario: kept.scenario, attachments });
  return `${opens}${json.replaceAll("<", "\\u003c")}${closes}`;
}

/** The JSON text that a report holds; null where the text is no report of ours. */
export function embeddedText(html: string): string | null {
  const ours = new RegExp(`\\bid="?${id}"?`, "i");
  for (const [, attributes = "", text = ""] of html.matchAll(/<script([^<>]*)>([^<]*)<\/script/gi)) {
    if (ours.test(attributes)) return text;
  }
  return null;
}
