import { expect, test } from "vitest";
import { densitySaid, type Decides } from "../../../../web/views/inputs/densityWords.ts";
import { resolvedOf } from "../../../../web/worker/resolved.ts";
import { demoAsWritten, resolved } from "../../../support/demos.ts";

interface Layer {
  readonly name: string;
  readonly bulkDensity?: string;
}

/** The pan of a demo, silt loam, with its density or without. */
async function pan(bulkDensity: string | undefined) {
  const written = demoAsWritten("sorghum-over-plough-pan") as unknown as { soil: { layers: Layer[] } };
  const layers = written.soil.layers.map(({ bulkDensity: own, ...layer }, l) =>
    l === 1
      ? { ...layer, ...(bulkDensity === undefined ? {} : { bulkDensity }) }
      : { ...layer, ...(own === undefined ? {} : { bulkDensity: own }) },
  );
  const { evidence: _, cases: __, ...rest } = written as unknown as Record<string, unknown>;
  return resolvedOf(await resolved({ ...rest, soil: { ...written.soil, layers } })).cases[0]!.layers[1]!;
}

const said = async (bulkDensity: string | undefined, decides: Decides) =>
  densitySaid(await pan(bulkDensity), decides)
    .map(({ text }) => text)
    .join("");

test("a layer without density or reading lets roots pass, in the model and in words", async () => {
  const layer = await pan(undefined);
  expect(layer.hindrance).toMatchObject({ strict: 1, usual: 1, lenient: 1 });
  expect(await said(undefined, "nothing")).toMatch(
    /^No density or penetrometer reading: this layer does not hold roots back\. Type one if it is dense\./,
  );
  expect(await said(undefined, "nothing")).not.toContain("of their pace");
});

test("a stated density tells what it leaves of the pace, unless a reading decides", async () => {
  expect(await said("1.65 g/cm^3", "density")).toMatch(
    /^At 1\.65 g\/cm³ in [a-z-]+ soil(?: \([^)]+ clay\))? roots keep \d+ % of their pace/,
  );
  expect(await said("1.65 g/cm^3", "penetrometer")).toContain("The penetrometer reading decides instead.");
  expect(await said("1.65 g/cm^3", "penetrometer")).not.toContain("find cracks");
});
