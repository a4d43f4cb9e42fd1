import { defineConfig } from "vitest/config";
import ClosingLine from "./tests/support/closingLine.ts";

export default defineConfig({
  test: {
    reporters: ["default", new ClosingLine()],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        // Left alone, vitest leaves a processor free: of two it would use one.
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/browser/**"],
          maxWorkers: "100%",
          // A worker reads the program once for all its files, which takes a quarter of the time off. A test that mocks a module reads it anew.
          isolate: false,
        },
      },
      {
        extends: true,
        // Two browsers at a time: a page is often waited for.
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/buildOnce.ts"],
          maxWorkers: 2,
          // A worker opens one browser and one server for all its files: `sharedHarness`.
          isolate: false,
          // A busy machine can be late for a click; what fails twice is a fault.
          retry: 1,
        },
      },
    ],
  },
});
