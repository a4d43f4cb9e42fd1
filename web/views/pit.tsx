import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import "../style/pit.css";
import { fault, problems, season, resolved } from "../worker/client.ts";
import { ToMend } from "./toMend.tsx";
import { Cautions, Method, StaleMark } from "./parts.tsx";
import { DiggingCaution } from "./inputs/caution.tsx";
import { followPlayDay } from "./pit/playhead.ts";
import { OutlookPart } from "./pit/outlook.tsx";
import { SeasonPicker } from "./pit/seasonPicker.tsx";
import { Years } from "./pit/years.tsx";
import { Wall } from "./pit/wall.tsx";

/** One season on the pit wall. */
export function PitView() {
  useEffect(followPlayDay, []);
  const chosenCase = useSignal(0);
  const soil = resolved.value;
  const now = season.value;
  return (
    <>
      <h1>The pit wall</h1>
      <StaleMark />
      {soil === null ? (
        <Nothing />
      ) : (
        <>
          {now !== null && <SeasonPicker season={now} />}
          <Wall resolved={soil} season={now} chosenCase={chosenCase} />
          <Years chosenCase={chosenCase} />
          <OutlookPart />
        </>
      )}
      <DiggingCaution />
      <Cautions />
      <Method />
    </>
  );
}

/** Before the scenario has been read for the first time. */
function Nothing() {
  if (problems.value.length > 0 || fault.value !== null) {
    return (
      <p class="waiting">
        No pit wall yet: <ToMend />.
      </p>
    );
  }
  return (
    <div class="pit-skeleton" role="status">
      <span class="only-heard">Digging the pit …</span>
    </div>
  );
}
