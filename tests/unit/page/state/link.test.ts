import { deflateRawSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { resolveScenario } from "../../../../src/scenario/index.ts";
import {
  isLink,
  isOwnMachine,
  LinkError,
  linkOf,
  longestLink,
  longestUnpacked,
  workFromLink,
} from "../../../../web/state/link.ts";

const scenario = {
  format: "rootfront-scenario/1",
  name: "ein Feld – 土",
  soil: { layers: [{ name: "topsoil" }] },
};
const packed = (text: string | Buffer) => `#s=${deflateRawSync(text).toString("base64url")}`;

describe("a link", () => {
  test("brings back what was put in, files too while they fit", async () => {
    const work = { scenario, attachments: { "my.csv": "date,rain\n2001-01-01,0\n" } };
    const { fragment, leftOut } = await linkOf(work);
    expect(isLink(fragment)).toBe(true);
    expect(leftOut).toEqual([]);
    expect(await workFromLink(fragment)).toEqual(work);
  });
  test("leaves out files that are too large and says which", async () => {
    const noise = Array.from({ length: 60_000 }, (_, i) =>
      ((i * 2_654_435_761) % 4_294_967_296).toString(36),
    ).join(",");
    const { fragment, leftOut } = await linkOf({ scenario, attachments: { "big.csv": noise } });
    expect(leftOut).toEqual(["big.csv"]);
    expect(fragment.length).toBeLessThan(longestLink);
    expect((await workFromLink(fragment)).attachments).toEqual({});
  });
  test("a scenario too long for a link is refused when it is made", async () => {
    const notes = Array.from({ length: 30_000 }, (_, i) =>
      ((i * 2_654_435_761) % 4_294_967_296).toString(36),
    ).join(" ");
    await expect(linkOf({ scenario: { ...scenario, notes }, attachments: {} })).rejects.toThrow(LinkError);
  });
});

describe("a link from anyone", () => {
  test.each([
    ["cut off", packed(JSON.stringify({ scenario })).slice(0, -12)],
    ["with other letters", "#s=!!!!"],
    ["empty", "#s="],
    ["not packed", "#s=bm90IHBhY2tlZA"],
    ["too long", `#s=${"A".repeat(longestLink)}`],
    ["no JSON", packed("{ this is no scenario }")],
    ["no scenario in it", packed(JSON.stringify({ something: 1 }))],
    ["an empty scenario", packed(JSON.stringify({ scenario: {}, attachments: {} }))],
    [
      "a scenario of another format",
      packed(JSON.stringify({ scenario: { ...scenario, format: "other/2" } })),
    ],
    ["a list for a scenario", packed(JSON.stringify({ scenario: [1, 2] }))],
    ["not text", packed(Buffer.from([0xff, 0xfe, 0xff]))],
    ["nested without end", packed(`{"scenario":${'{"a":'.repeat(2000)}1${"}".repeat(2000)}}`)],
    [
      "unpacking to far more than any scenario",
      packed(JSON.stringify({ scenario: { ...scenario, notes: " ".repeat(9_000_000) } })),
    ],
    [
      "unpacking to a little more than any scenario",
      packed(JSON.stringify({ scenario: { ...scenario, notes: "1".repeat(longestUnpacked) } })),
    ],
  ])("%s is refused in words", async (_, fragment) => {
    await expect(workFromLink(fragment)).rejects.toThrow(LinkError);
  });
  test("that is short and holds a long text is read, and its scenario refused at once", async () => {
    const annualRain = "1".repeat(longestUnpacked - 1000);
    const fragment = packed(JSON.stringify({ scenario: { ...scenario, weather: { annualRain } } }));
    expect(fragment.length).toBeLessThan(1770);
    const work = await workFromLink(fragment);
    await expect(resolveScenario(work.scenario, { fileName: "link", readText: () => "" })).rejects.toThrow(
      /^weather\.annualRain: expected rainfall totals .* shorten it to at most 200 letters$/m,
    );
  });
  test("files that are no text are left out", async () => {
    const { attachments } = await workFromLink(
      packed(JSON.stringify({ scenario, attachments: { a: "x", b: { c: 1 } } })),
    );
    expect(attachments).toEqual({ a: "x" });
  });
});

test.each([
  ["http://127.0.0.1:8640/", true],
  ["http://localhost:8640/", true],
  ["http://field.localhost/", true],
  ["http://[::1]:8640/", true],
  ["file:///tmp/index.html", true],
  ["http://192.168.1.20:8640/", false],
  ["https://127.example.org/", false],
  ["https://localhost.example.org/", false],
  ["https://example.org/rootfront/", false],
])("%s is an address that only this machine reaches: %s", (address, only) =>
  expect(isOwnMachine(new URL(address))).toBe(only),
);
