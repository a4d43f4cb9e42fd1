import { readJson } from "../../src/scenario/read/readJson.ts";
import { scenarioFormat } from "../../src/scenario/read/format.ts";
import { isGroup, type Json } from "./json.ts";
import type { Attachments, Work } from "./scenarioStore.ts";

/**
 * A whole scenario in the fragment of an address: `#s=` and base64url of deflated JSON. A fragment never leaves the
 * browser. What comes in this way is from anyone: sizes are checked before and while it is unpacked, and then it is read as
 * any file is.
 */

/** Longest fragment made or read, letters; mail programs and chat windows cut off much longer ones. */
export const longestLink = 32_000;
/** Most text a link may unpack to, letters. */
export const longestUnpacked = 512 * 1024;

export interface MadeLink {
  readonly fragment: string;
  /** Files that did not fit: whoever opens the link has to add them. */
  readonly leftOut: readonly string[];
}

/** Throws LinkError when the scenario alone is too long. */
export async function linkOf({ scenario, attachments }: Work): Promise<MadeLink> {
  const names = Object.keys(attachments);
  const whole = `#s=${await packed(JSON.stringify({ scenario, attachments }))}`;
  if (whole.length <= longestLink) return { fragment: whole, leftOut: [] };
  const bare = `#s=${await packed(JSON.stringify({ scenario, attachments: {} }))}`;
  if (bare.length > longestLink)
    throw new LinkError("This scenario is too long for a link: save it as a file instead.");
  return { fragment: bare, leftOut: names };
}

/**
 * Whether an address is one that only the machine itself reaches, so that a link from it opens nowhere else.
 * @example isOwnMachine(new URL("http://127.0.0.1:8640/")) // true
 */
export function isOwnMachine({ protocol, hostname }: Pick<URL, "protocol" | "hostname">): boolean {
  return (
    protocol === "file:" ||
    hostname === "[::1]" ||
    /^(?:.*\.)?localhost$|^127(?:\.\d{1,3}){3}$|^0\.0\.0\.0$/.test(hostname)
  );
}

/** A link that cannot be read, in words for the person who opened it. */
export class LinkError extends Error {}

export function isLink(hash: string): boolean {
  return hash.startsWith("#s=");
}

/** Throws LinkError with what is wrong. */
export async function workFromLink(hash: string): Promise<Work> {
  if (hash.length > longestLink) throw new LinkError("This link is longer than any that rootfront makes.");
  const read = readJsonOrSay(await unpacked(hash.slice("#s=".length)));
  const scenario = isGroup(read) ? read["scenario"] : undefined;
  // Faults within a scenario can be mended on the page; what is none at all is not let in.
  if (!isGroup(read) || !isGroup(scenario) || scenario["format"] !== scenarioFormat)
    throw new LinkError("This link holds no scenario.");
  return { scenario, attachments: attachmentsIn(read["attachments"]) };
}

function readJsonOrSay(text: string): Json {
  try {
    return readJson(text, "the link") as Json;
  } catch {
    throw new LinkError("This link is damaged: it may have been cut off on its way.");
  }
}

function attachmentsIn(found: Json | undefined): Attachments {
  if (!isGroup(found)) return {};
  return Object.fromEntries(
    Object.entries(found).filter(
      (entry): entry is [string, string] => typeof entry[1] === "string" && entry[0].length <= 300,
    ),
  );
}

async function packed(text: string): Promise<string> {
  const deflated = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  const bytes = new Uint8Array(await new Response(deflated).arrayBuffer());
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** Reads no further than `longestUnpacked`, however small the packed text is. */
async function unpacked(text: string): Promise<string> {
  const damaged = new LinkError("This link is damaged: it may have been cut off on its way.");
  if (!/^[\w-]+$/.test(text)) throw damaged;
  let binary: string;
  try {
    binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  } catch {
    throw damaged;
  }
  const bytes = Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  const inflated = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  const reader = inflated.pipeThrough(new TextDecoderStream("utf-8", { fatal: true })).getReader();
  let whole = "";
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw damaged;
    });
    if (done) return whole;
    whole += value;
    if (whole.length > longestUnpacked) {
      await reader.cancel().catch(() => undefined);
      throw new LinkError("This link unpacks to more than any scenario holds.");
    }
  }
}
