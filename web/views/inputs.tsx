import "../style/inputs.css";
import { useRef } from "preact/hooks";
import { answer } from "../worker/client.ts";
import { FileSection } from "./inputs/asFile.tsx";
import { CasesSection } from "./inputs/cases.tsx";
import { CropSection } from "./inputs/crop.tsx";
import { useHintsInUse } from "../forms/hintsInUse.ts";
import { ProblemList } from "./inputs/problemList.tsx";
import { RunsSection } from "./inputs/runs.tsx";
import { ScenarioSection, SiteSection } from "./inputs/site.tsx";
import { SoilSection } from "./inputs/soil/soil.tsx";
import { StartSection } from "./inputs/start.tsx";
import { SurfaceSection } from "./inputs/surface.tsx";
import { WeatherSection } from "./inputs/weather.tsx";
import { YieldSection } from "./inputs/yield.tsx";
import { answerClass, StaleMark } from "./parts.tsx";

/** Everything that can be changed, a card for each part of the scenario, and the answer beside it. */
export function InputsView() {
  const cards = useRef<HTMLDivElement>(null);
  useHintsInUse(cards);
  return (
    <div class="inputs">
      <div class="cards hints-in-use" ref={cards}>
        <h1>Inputs</h1>
        <p class="aside">
          Type a quantity with its unit (14 in, 1.42 g/cm^3, 35 %); a number alone gets the unit chosen above.
          What you leave empty is filled in, and its field says with what.
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
      <AnswerNow />
    </div>
  );
}

/** What all this comes to, while it is changed: always in sight. */
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
