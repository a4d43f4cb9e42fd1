/** The report: one self-contained HTML page. */
export { reportMatter, type ReportMatter } from "./reportInput.ts";
export { reportHtml } from "./reportPage.ts";
export { embeddedText, leftOutOf, type KeptScenario } from "./embedded.ts";
