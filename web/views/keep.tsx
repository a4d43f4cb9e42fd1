import "../style/keep.css";
import { DemosSection } from "./keep/demosSection.tsx";
import { LinkSection } from "./keep/linkSection.tsx";
import { ReportSection } from "./keep/reportSection.tsx";
import { ResultsSection } from "./keep/resultsSection.tsx";
import { ScenarioSection } from "./keep/scenarioSection.tsx";
import { Cautions, StaleMark } from "./parts.tsx";

/** In and out: files, links, the report. */
export function KeepView() {
  return (
    <div class="keep">
      <h1>Keep &amp; share</h1>
      <StaleMark />
      <div class="keep-sheets">
        <ScenarioSection />
        <ReportSection />
        <LinkSection />
        <ResultsSection />
        <DemosSection />
      </div>
      <Cautions />
    </div>
  );
}
