import { useRef } from "preact/hooks";
import {
  addCase,
  caseNamedIn,
  casesIn,
  duplicateCase,
  goesWithCase,
  removeCase,
} from "../../forms/edits/caseEdits.ts";
import { caseInWords } from "../../forms/edits/caseWords.ts";
import { Field } from "../../forms/field.tsx";
import { layersOf, patchesOf } from "../../forms/edits/layerEdits.ts";
import { listText } from "../../forms/listText.ts";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { sayDefault } from "../../forms/sayDefault.ts";
import { type Json } from "../../state/json.ts";
import { attachments, edit, replace, scenario, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { defaultsByPath } from "../../worker/client.ts";
import { FallowField } from "./crop.tsx";
import { CropFields } from "./cropFields.tsx";
import { MethodFields } from "./runs.tsx";
import { LayerFields, layerShown, whereOf } from "./soil/layer.tsx";
import { SoilEndFields } from "./soil/soil.tsx";
import { ShareField, ProbeFields } from "./start.tsx";
import { Fields, More, Section } from "./section.tsx";
import { SurfaceFields } from "./surface.tsx";

/** What is compared. */
export function CasesSection() {
  const cases = casesIn(scenario.value);
  return (
    <Section id="cases">
      <p class="aside">
        The first case is compared with each of the others. A case says only what differs from the rest of
        this page.
      </p>
      <ProblemNote id="inputs-cases-wrong" problems={fieldState("cases").problems} />
      {cases.length === 0 && <p>Nothing is compared yet: there is one case, the field as described.</p>}
      {cases.map((_, index) => (
        <CaseForm key={index} index={index} />
      ))}
      <p class="tools">
        <button type="button" onClick={() => change(addCase(scenario.value), "add a case")}>
          Add a case
        </button>
      </p>
    </Section>
  );
}

/** A first case stands by itself; the others may be told against it. */
function depthHint(index: number): string {
  const [depth, more] = units.value === "us" ? ["34 in", "+2 in"] : ["860 mm", "+50 mm"];
  return index === 0
    ? `If you have dug and know it, for example ${depth}`
    : `For example ${depth}; or ${more}: so much deeper than the first case`;
}

function change(next: Json, said: string): void {
  replace(next, attachments.value, said);
}

function CaseForm({ index }: { index: number }) {
  const path = `cases[${index}]`;
  const cases = casesIn(scenario.value);
  const one = cases[index] ?? {};
  const title = nameOf(one["name"], `Case ${index + 1}`);
  const along = goesWithCase(scenario.value, title);
  const said = caseInWords(one, nameOf(cases[0]?.["name"], "the first"));
  const layers = layersOf(scenario.value);
  return (
    <fieldset class="case" data-path={path}>
      <legend>
        {title}
        {index === 0 && <span class="layer-where"> the one that others are compared with</span>}
      </legend>
      <p class="case-said">
        {said.length === 0
          ? index === 0
            ? "As described above."
            : "Nothing differs yet."
          : `${said.join("; ")}.`}
      </p>
      <Fields>
        <CaseName index={index} />
        <Field
          path={`${path}.rootingDepth`}
          label="Deepest rooting"
          hint={depthHint(index)}
          otherwise="as deep as the soil lets them grow"
        />
      </Fields>
      {layers.map((layer, l) => (
        <LayerPatch key={l} caseIndex={index} layerIndex={l} name={nameOf(layer["name"], "")} />
      ))}
      <More title="Water at the start" paths={[`${path}.soil.startingWater`]}>
        {() => (
          <>
            <StartPatch path={`${path}.soil.startingWater`} />
          </>
        )}
      </More>
      <More title="Surface" paths={[`${path}.surface`]}>
        {() => (
          <>
            <SurfaceFields path={`${path}.surface`} inherited={baseOf("surface", path)} />
          </>
        )}
      </More>
      <More
        title="Crop, fallow and method"
        paths={["crop", "fallow", "model"].map((key) => `${path}.${key}`)}
      >
        {() => (
          <>
            <Fields>
              <FallowField path={`${path}.fallow`} inherited={baseOf("fallow")} />
              <MethodFields path={`${path}.model`} inherited={baseOf("model")} />
            </Fields>
            <CropFields path={`${path}.crop`} inherited={baseOf("crop")} />
          </>
        )}
      </More>
      <More title="What ends the soil" paths={[`${path}.soil.restriction`, `${path}.soil.hydrologicGroup`]}>
        {() => (
          <>
            <Fields>
              <SoilEndFields path={`${path}.soil`} inherited={baseOf("soil")} />
            </Fields>
          </>
        )}
      </More>
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => change(duplicateCase(scenario.value, index), `duplicate ${title}`)}
        >
          Duplicate
        </button>
        <button
          type="button"
          class="small"
          title={along === null ? undefined : `Takes ${along} along`}
          onClick={() =>
            change(
              removeCase(scenario.value, index),
              along === null ? `remove ${title}` : `remove ${title} with ${along}`,
            )
          }
        >
          Remove
        </button>
      </p>
    </fieldset>
  );
}

/** Plants dug and rows name their case: they follow. */
function CaseName({ index }: { index: number }) {
  const followers = useRef<readonly string[]>([]);
  const path = `cases[${index}].name`;
  return (
    <div
      onFocusCapture={() => {
        followers.current = caseNamedIn(scenario.value, nameOf(valueAt(path), ""));
      }}
    >
      <Field
        path={path}
        label="Name"
        also={(value) => followers.current.map((one) => [one, value ?? ""] as const)}
      />
    </div>
  );
}

/** What differs in one layer of a case. It comes into being with its first figure, and goes with its last. */
function LayerPatch({
  caseIndex,
  layerIndex,
  name,
}: {
  caseIndex: number;
  layerIndex: number;
  name: string;
}) {
  const patches = patchesOf(scenario.value, caseIndex);
  const found = patches.findIndex((patch) => patch["name"] === name);
  const list = `cases[${caseIndex}].soil.layers`;
  const path = `${list}[${found < 0 ? patches.length : found}]`;
  const differs = Object.keys(patches[found] ?? {}).filter((key) => key !== "name");
  const along = (key: string, value: Json | undefined) => {
    if (value !== undefined) return [[`${path}.name`, name]] as const;
    const isLast = differs.every((one) => one === key);
    // An empty list would be refused: the last difference takes it along.
    return isLast ? ([[patches.length <= 1 ? list : path, undefined]] as const) : [];
  };
  const base = baseOf(`soil.layers[${layerIndex}]`);
  const shown = layerShown(layerIndex, caseIndex);
  return (
    <More title={shown === null ? name : `${name}, ${whereOf(shown)}`} paths={[path]}>
      {() => (
        <>
          <LayerFields path={path} index={layerIndex} shown={shown} along={along} inherited={base} />
          <Fields>
            <Field
              path={`${path}.water`}
              label="Water at the start"
              hint="Then every layer needs it: 22 % by weight, 27 % by volume, 1.2 in available, 40 % of available"
              otherwise={base("water")}
              also={(value) => along("water", value)}
            />
          </Fields>
          {differs.length > 0 && (
            <p class="tools">
              <button
                type="button"
                class="small"
                onClick={() =>
                  edit(
                    patches.length <= 1 ? list : path,
                    undefined,
                    "chosen",
                    `take back what differs in ${name}`,
                  )
                }
              >
                Take back what differs here
              </button>
            </p>
          )}
        </>
      )}
    </More>
  );
}

/** A case's own starting water replaces the base's as a whole. */
function StartPatch({ path }: { path: string }) {
  return (
    <>
      <p class="aside">
        In place of the base's as a whole: a share everywhere, or a probe's depth with the share below it.
      </p>
      <ProblemNote id={`inputs-${path}-wrong`} problems={fieldState(path).problems} />
      <Fields>
        <ShareField path={path} inherited={baseOf("soil.startingWater")} />
        <ProbeFields path={path} />
      </Fields>
    </>
  );
}

/**
 * What the base says of a key, in words; undefined where it says nothing and has no default.
 *
 * @param casePath where the case has a default of its own: one that follows from its own soil
 */
function baseOf(group: string, casePath?: string): (key: string) => string | undefined {
  return (key) => {
    const path = `${group}.${key}`;
    const value = valueAt(path);
    if (value !== undefined) return `${listText(value)}, as in the rest`;
    const own = casePath === undefined ? undefined : defaultsByPath.value.get(`${casePath}.${path}`);
    if (own !== undefined) return `${sayDefault(own.value)}, by this case's own soil and surface`;
    const usual = defaultsByPath.value.get(path);
    return usual === undefined ? undefined : `${sayDefault(usual.value)}, as in the rest`;
  };
}

function nameOf(name: Json | undefined, otherwise: string): string {
  return typeof name === "string" && name !== "" ? name : otherwise;
}
