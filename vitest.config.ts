import { defineConfig } from "vitest/config";
import ClosingLine from "./tests/support/closingLine.ts";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    reporters: ["default", new ClosingLine()],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
