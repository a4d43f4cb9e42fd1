/** `npm run laws`: the files of tests with a law that other runs try with fewer cases, with all of them. */
import { startVitest } from "vitest/node";

process.env["ROOTFRONT_LAWS"] = "whole";
const vitest = await startVitest("test", [], {
  project: "unit",
  related: ["tests/support/laws.ts"],
  watch: false,
  // The slowest law takes minutes on a busy machine.
  testTimeout: 600_000,
});
await vitest.close();
