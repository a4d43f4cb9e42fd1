import type { Reporter, TestModule } from "vitest/node";
import { wholeLaws } from "./laws.ts";

/** Ends a run with one plain line: how many passed, failed and were skipped, and whether laws were tried whole. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.state() === "failed" && [...module.children.allTests()].length === 0) count.failed++;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`);
    if (!wholeLaws && modules.some(({ project }) => project.name === "unit"))
      console.log("The slowest laws were tried with fewer cases; npm run laws tries all of them.");
  }
}
