import type { Problem } from "../problem.ts";
import { isTooLong, shortenIt } from "./longest.ts";
import { splitNumber } from "./numberText.ts";

const wrong: Pick<Problem, "expected" | "mend"> = {
  expected: 'a latitude such as "38.5 N", "38\u00b030\' N" or -33.2',
  mend: "write degrees with a point, or degrees and minutes; N or no letter is north, S or minus is south",
};

/** Farthest north or south that a site may lie. */
export const mostLatitudeDeg = 66;
export const latitudeWithin = `a latitude from ${mostLatitudeDeg} S to ${mostLatitudeDeg} N`;

const beyondPole: typeof wrong = { expected: latitudeWithin, mend: "check the number" };

/**
 * Latitude in degrees, north positive.
 * @example tryLatitude("38\u00b030' N") // 38.5
 */
export function tryLatitude(found: unknown): number | typeof wrong {
  if (typeof found === "number") return Math.abs(found) <= 90 ? found : beyondPole;
  if (typeof found !== "string") return wrong;
  if (isTooLong(found)) return { ...wrong, mend: shortenIt };
  const text = found.trim();
  const letters = text.match(/[a-z]+/gi) ?? [];
  const side = letters.filter((word) => /^(n|s|north|south)$/i.test(word));
  if (side.length > 1 || letters.some((word) => !/^(n|s|north|south|deg|degrees?|min|sec)$/i.test(word)))
    return wrong;
  const figures = text
    .replace(/[a-z]+/gi, " ")
    .replace(/[\u00b0'"\u2032\u2033:]/g, " ")
    .trim()
    .split(/\s+/);
  const parts = figures.map((figure) => splitNumber(figure));
  if (parts.length > 3 || parts.some((part) => part === null || part.unit !== "")) return wrong;
  const [degrees = 0, minutes = 0, seconds = 0] = parts.map((part) => part?.value ?? 0);
  if (minutes < 0 || minutes >= 60 || seconds < 0 || seconds >= 60) return wrong;
  const southern = /^s/i.test(side[0] ?? "");
  if (degrees < 0 && side.length > 0) return wrong; // "-33 S" may mean either
  const size = Math.abs(degrees) + minutes / 60 + seconds / 3600;
  if (size > 90) return beyondPole;
  return southern || degrees < 0 ? -size : size;
}
