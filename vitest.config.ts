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
        test: { name: "unit", include: ["tests/**/*.test.ts"], exclude: ["tests/browser/**"] },
      },
      {
        extends: true,
        // One browser at a time: the machine has two cores, and some of these tests measure.
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          globalSetup: ["tests/browser/buildOnce.ts"],
          fileParallelism: false,
          // A busy machine can be late for a click; what fails twice is a fault.
          retry: 1,
        },
      },
    ],
  },
});
