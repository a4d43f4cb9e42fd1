import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { prepare } from "../../../src/answer/runs/prepare.ts";
import { placeInWords } from "../../../web/forms/placeWords.ts";
import { columnsOf, severalSaid } from "../../../web/views/field/counts/columns.ts";
import { demoAsWritten, resolved } from "../../support/demos.ts";
import type { Json } from "../../../web/state/json.ts";

test.each([
  ["corn", "rows", "Several ears of a spot stand in one cell: 16, 14, 16."],
  ["corn", "kernels", "Several ears of a spot stand in one cell: 520, 480, 505."],
  ["sorghum", "kernels", "Several heads of a spot stand in one cell: 980, 1110, 870."],
  ["winter wheat", "spikelets", "Several heads of a spot stand in one cell: 14, 12, 13."],
  ["sunflower", "diameters", "Several heads of a spot stand in one cell: 6, 5.5, 7."],
  ["winter wheat", "heads", ""],
] as const)("of %s by %s", (crop, way, said) =>
  expect(severalSaid(columnsOf(crop, way, [], false))).toBe(said),
);

test("what the page says is American", () => {
  const web = new URL("../../../web/", import.meta.url);
  const british = readdirSync(web, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".tsx"))
    .flatMap((file) => {
      // Between quotes or tags, without what is a name in code.
      const text = readFileSync(new URL(file, web), "utf8").replace(/\/\*[^]*?\*\/|\/\/.*|import .*/g, "");
      return [
        ...text.matchAll(
          /(?:>|["`])[^<>"`{};=()]*\b(?:tyres?|plough\w*|colours?|metres?|grey)\b(?![-.])[^<>"`{};=()]*(?=[<"`{])/gi,
        ),
      ]
        .map(([said]) => said.slice(1).trim())
        .filter((said) => /\s/.test(said) || /^[A-Z]/.test(said))
        .map((said) => `${file}: ${said}`);
    });
  expect(british).toEqual([]);
});

/** A page's sources, without comments. */
const sources = () => {
  const web = new URL("../../../web/", import.meta.url);
  return readdirSync(web, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".tsx"))
    .map(
      (file) =>
        [file, readFileSync(new URL(file, web), "utf8").replace(/\/\*[^]*?\*\/|\/\/.*/g, "")] as const,
    );
};

test("neighbors are American too, whatever else the sentence holds", () =>
  expect(sources().filter(([, text]) => /\bneighbours?\b|\bneighbouring\b/i.test(text))).toEqual([]));

test("no name of the code stands as a text between tags", () => {
  // A text alone on its line: once a button to close a note was renamed with a type of the same name.
  const names = sources().flatMap(([file, text]) =>
    [...text.matchAll(/>\s*\n\s*([A-Za-z]+[a-z][A-Z][A-Za-z]*)\s*\n\s*</g)].map(
      ([, name]) => `${file}: ${name}`,
    ),
  );
  expect(names).toEqual([]);
});

test("every default of a demo is told in the words of the form", async () => {
  const written = demoAsWritten("sorghum-over-plough-pan");
  const { defaults } = prepare(await resolved(written)).scenario;
  expect(defaults.length).toBeGreaterThan(20);
  const inCode = defaults
    .map(({ field }) => placeInWords(field, written as Json))
    .filter((said) => /\.[a-z]|\[\d|[a-z][A-Z]/.test(said));
  expect(inCode).toEqual([]);
});
