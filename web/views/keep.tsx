import "../style/keep.css";
import { useSignal } from "@preact/signals";
import { DemosSection } from "./keep/demosSection.tsx";
import { LinkSection } from "./keep/linkSection.tsx";
import { openFiles } from "./keep/openFiles.ts";
import { ReportSection } from "./keep/reportSection.tsx";
import { ResultsSection } from "./keep/resultsSection.tsx";
import { ScenarioSection } from "./keep/scenarioSection.tsx";
import { Cautions, StaleMark } from "./parts.tsx";

/** In and out: files, links, the report. A file may be dropped anywhere on it. */
export function KeepView() {
  const isOver = useSignal(false);
  return (
    <div
      class={`keep${isOver.value ? " is-over" : ""}`}
      onDragOver={(event) => {
        if (!event.dataTransfer?.types.includes("Files")) return;
        event.preventDefault();
        isOver.value = true;
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) isOver.value = false;
      }}
      onDrop={(event) => {
        event.preventDefault();
        isOver.value = false;
        void openFiles([...(event.dataTransfer?.files ?? [])]);
      }}
    >
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
