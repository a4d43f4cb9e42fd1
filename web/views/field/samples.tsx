import "../../style/field-dig.css";
import { DiggingCaution } from "../inputs/caution.tsx";
import { EntryFirst } from "./entryFirst.tsx";
import { CoresEntered } from "./samples/cores.tsx";
import { PushesEntered } from "./samples/pushes.tsx";
import { SamplesShown } from "./samples/shown.tsx";
import { StartSampled } from "./samples/start.tsx";

/** Cores, push probe and penetrometer: what they say of the soil, and where they are entered. */
export function Samples() {
  return (
    <div class="samples">
      <EntryFirst shown={<SamplesShown />} entry={<SamplesEntered />} />
      <DiggingCaution />
    </div>
  );
}

function SamplesEntered() {
  return (
    <>
      <section class="samples-part">
        <h3>Water when the run begins</h3>
        <StartSampled />
      </section>
      <section class="samples-part">
        <h3>Cores</h3>
        <CoresEntered />
      </section>
      <section class="samples-part">
        <h3>Penetrometer</h3>
        <PushesEntered />
      </section>
    </>
  );
}
