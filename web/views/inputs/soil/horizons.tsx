import { profilesAsked } from "../../../forms/choicesAsked.ts";
import { Field } from "../../../forms/field.tsx";
import { FileDrop } from "../../../forms/files/fileDrop.tsx";
import { useFile } from "../../../forms/files/fileReader.ts";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { inputLayers } from "../../../forms/edits/takenOver.ts";
import { attach, attachments, editMany, valueAt } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { defaultsByPath, problems, resolved } from "../../../worker/client.ts";
import { whereOf } from "./layer.tsx";
import { Fields } from "../section.tsx";

/** Layers out of a file of horizons. */
export function HorizonsForm() {
  const file = textAt("soil.horizons.file");
  const text = attachments.value[file];
  const choose = {
    component: textAt("soil.horizons.component") || undefined,
    pedon: textAt("soil.horizons.pedon") || undefined,
  };
  const answer = useFile(
    text === undefined ? null : { kind: "horizons", text, fileName: file, choose },
  ).value;
  const asked = (answer?.problems ?? []).map(profilesAsked).find((one) => one !== null) ?? null;
  const missing = text === undefined ? fieldState("soil.horizons.file").problems : [];
  return (
    <div data-path="soil.horizons">
      <FileDrop
        label={file === "" ? "Choose a file of horizons" : "Choose another file"}
        accept=".csv,.txt,text/csv"
        onText={(name, read) =>
          attach(name, read, [
            ["soil.horizons", { file: name }],
            ["soil.layers", undefined],
          ])
        }
      >
        <p>
          {file === "" ? (
            <>
              Drop a CSV here: a soil survey's or laboratory's horizons, or a table as printed, its units in
              the header (such as Top (in), Bottom (in), Sand %, Clay %).
            </>
          ) : (
            <>
              Horizons from <strong>{file}</strong>. Drop another CSV to change it.
            </>
          )}
        </p>
      </FileDrop>
      <ProblemNote id="inputs-horizons-wrong" problems={[...missing, ...(answer?.problems ?? [])]} />
      {asked !== null && (
        <div class="asked" role="group" aria-label={`Which ${asked.key}`}>
          {asked.choices.map(({ value, word }) => (
            <button
              key={value}
              type="button"
              onClick={() => editMany([[`soil.horizons.${asked.key}`, value]], "chosen", `choose ${word}`)}
            >
              {word}
            </button>
          ))}
        </div>
      )}
      {file !== "" && (
        <Fields>
          <Field path="soil.horizons.component" label="Component" hint="Of a survey, by name or key" />
          <Field path="soil.horizons.pedon" label="Pedon" hint="Of a laboratory, by name or key" />
        </Fields>
      )}
      {answer?.problems.length === 0 && problems.value.length === 0 && <TakeOver />}
    </div>
  );
}

/** The file's layers as the engine read them, and the way to go on with them by hand. */
function TakeOver() {
  const layers = resolved.value?.cases[0]?.layers ?? [];
  const take = () =>
    editMany(
      [
        ["soil.horizons", undefined],
        ["soil.layers", inputLayers(layers, (path) => defaultsByPath.value.has(path), units.value)],
      ],
      "chosen",
      "take the file's layers over",
    );
  return (
    <>
      <ul class="read-layers">
        {layers.map((layer) => (
          <li key={layer.name}>
            <strong>{layer.name}</strong>: {whereOf(layer)}, {(layer.bulkDensityKgPerM3 / 1000).toFixed(2)}{" "}
            g/cm³
          </li>
        ))}
      </ul>
      <p class="tools">
        <button type="button" onClick={take}>
          Take these layers over to change them
        </button>
      </p>
    </>
  );
}

function textAt(path: string): string {
  const value = valueAt(path);
  return typeof value === "string" ? value : "";
}
