import "../style/inputs.css";
import { answer } from "../worker/client.ts";
import { FileSection } from "./inputs/asFile.tsx";
import { CasesSection } from "./inputs/cases.tsx";
import { Contents } from "./inputs/contents.tsx";
import { CropSection } from "./inputs/crop.tsx";
import { ProblemList } from "./inputs/problemList.tsx";
import { RunsSection } from "./inputs/runs.tsx";
import { ScenarioSection, SiteSection } from "./inputs/site.tsx";
import { SoilSection } from "./inputs/soil/soil.tsx";
import { StartSection } from "./inputs/start.tsx";
import { SurfaceSection } from "./inputs/surface.tsx";
import { WeatherSection } from "./inputs/weather.tsx";
import { YieldSection } from "./inputs/yield.tsx";
import { answerClass, StaleMark } from "./parts.tsx";

/** Everything that can be changed, a page of the notebook for each part of the scenario. */
export function InputsView() {
  return (
    <div class="inputs">
      <div class="inputs-side">
        <Contents />
        <AnswerNow />
      </div>
      <div class="leaves">
        <h1>Inputs</h1>
        <p class="aside">
          Write quantities with their unit, as you have them: 14 in or 355 mm, 1.42 g/cm^3, 50 F, 35 %. A
          number alone gets the unit chosen above. What you leave empty is filled in, and each field says with
          what and why; “not yet checked against the source” means that the figure was written down from
          memory. Changing the units changes what is shown, never what you typed.
        </p>
        <ProblemList />
        <ScenarioSection />
        <SiteSection />
        <SoilSection />
        <StartSection />
        <WeatherSection />
        <CropSection />
        <SurfaceSection />
        <CasesSection />
        <YieldSection />
        <RunsSection />
        <FileSection />
      </div>
    </div>
  );
}

/** What all this comes to, while it is changed. */
function AnswerNow() {
  const sentence = answer.value?.told[0]?.sentence;
  if (sentence === undefined) return null;
  return (
    <div class={`answer-now ${answerClass()}`} role="group" aria-label="The answer now">
      <StaleMark />
      <p>{sentence}</p>
    </div>
  );
}
