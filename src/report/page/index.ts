/** The report: one self-contained HTML page. */
export { reportInput, type ReportInput } from "./reportInput.ts";
export { reportHtml } from "./reportPage.ts";
export { embeddedText, leftOutOf, type KeptScenario } from "./embedded.ts";
