import { coredWater } from "../../../forms/edits/coredWater.ts";
import { Field } from "../../../forms/field.tsx";
import { layersOf } from "../../../forms/edits/layerEdits.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { changeWay } from "../../../forms/edits/alternatives.ts";
import { Switch } from "../../../forms/switch.tsx";
import { scenario, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { problemsByPath } from "../../../worker/client.ts";
import { startPath } from "./edits.ts";

type Way = "inputs" | "probe" | "cores";

/** Where the run takes its first water from. */
export function StartSampled() {
  const layers = layersOf(scenario.value);
  const way: Way =
    valueAt(`${startPath}.from`) === "cores"
      ? "cores"
      : valueAt(`${startPath}.moistDepth`) !== undefined
        ? "probe"
        : "inputs";
  const { isWeighed, hasBelow } = coredWater(scenario.value);
  return (
    <fieldset class="plain-group">
      <legend>Start the run with</legend>
      <Switch
        label="Start the run with"
        value={way}
        choices={[
          ["inputs", "The water told in Inputs"],
          ["probe", "The push probe's"],
          ...(isWeighed || way === "cores" ? ([["cores", "The water of the cores"]] as const) : []),
        ]}
        onChoose={(wanted) => choose(wanted, layers.length, hasBelow)}
      />
      <ProblemNote id="field-start-wrong" problems={problemsAbout()} />
      {!isWeighed && way !== "cores" && (
        <p class="aside">Cores weighed wet can give it too, once they are entered.</p>
      )}
      {way !== "inputs" && (
        <div class="field-grid">
          {way === "probe" && (
            <Field
              path={`${startPath}.moistDepth`}
              label="Moist down to"
              hint="As deep as the probe goes in by hand; push in more than one place"
            />
          )}
          {(way === "probe" || hasBelow) && (
            <Field
              path={`${startPath}.shareBelow`}
              label={way === "probe" ? "Below that" : "Below the deepest core"}
              hint="Share of the available water"
            />
          )}
        </div>
      )}
    </fieldset>
  );
}

function problemsAbout() {
  return [startPath, `${startPath}.from`].flatMap((path) => problemsByPath.value.get(path) ?? []);
}

/** What another way had written is put away, and is there again when one comes back. */
function choose(wanted: Way, layers: number, hasBelow: boolean): void {
  const places = ["share", "from", "moistDepth", "shareBelow"].map((key) => `${startPath}.${key}`);
  const waters = Array.from({ length: layers }, (_, l) => `soil.layers[${l}].water`);
  if (wanted === "inputs") {
    const [share] = places;
    return changeWay(
      places.slice(1),
      [[share!, undefined], ...waters.map((path) => [path, undefined] as const)],
      "start with the water told in Inputs",
    );
  }
  const below = [`${startPath}.shareBelow`, wanted === "probe" ? "20 %" : "50 %"] as const;
  const starts =
    wanted === "probe"
      ? ([[`${startPath}.moistDepth`, units.value === "us" ? "30 in" : "750 mm"], below] as const)
      : ([[`${startPath}.from`, "cores"], ...(hasBelow ? [below] : [])] as const);
  changeWay(
    [...places, ...waters].filter((path) => !starts.some(([own]) => own === path)),
    starts,
    wanted === "probe" ? "start with the push probe's water" : "start with the water of the cores",
  );
}
