import { alternatives } from "../../../../src/scenario/fields/facts/alternatives.ts";
import { takesOut } from "../../../forms/fieldsOf.ts";
import { useSignal } from "@preact/signals";
import { cropNamed } from "../../../../src/crop/crops.ts";
import { Field } from "../../../forms/field.tsx";
import { ProblemNote } from "../../../forms/notes.tsx";
import { fieldState } from "../../../forms/place.tsx";
import { changeWay } from "../../../forms/edits/alternatives.ts";
import { Switch } from "../../../forms/switch.tsx";
import type { JsonGroup } from "../../../state/json.ts";
import { editMany, scenario } from "../../../state/scenarioStore.ts";
import { units } from "../../../state/view.ts";
import { resolved } from "../../../worker/client.ts";
import { Fields, More } from "../../inputs/section.tsx";
import { columnsOf, isWritten, keysOfWay, wayOf, waysOf, wordOf, weightKeys, type Way } from "./columns.ts";
import { addSpot, countsPath, removeGroup, spotsIn } from "./edits.ts";
import { rowToWalk } from "./rowToWalk.ts";
import { SpotsTable } from "./spotsTable.tsx";

interface GroupProps {
  readonly index: number;
  readonly group: JsonGroup;
  readonly cropName: string;
  readonly caseNames: readonly string[];
}

/** What was counted in one case, at one place of the row. */
export function Group({ index, group, cropName, caseNames }: GroupProps) {
  const path = `${countsPath}[${index}]`;
  const ground = (key: string) => takesOut(path, key, alternatives.countedGround);
  const spots = spotsIn(scenario.value, index);
  const ways = waysOf(cropName);
  const chosen = useSignal<Way | null>(null);
  const ownGround = useSignal(false);
  const way =
    wayOf(spots) ?? (chosen.value !== null && ways.includes(chosen.value) ? chosen.value : ways[0]!);
  const columns = columnsOf(cropName, way, spots, ownGround.value);
  const title = titleOf(group, index);
  const choose = (next: Way) => {
    chosen.value = next;
    changeWay(
      placesOf(path, spots.length, keysOfWay(way), outOf(weightKeys[way], weightKeys[next])),
      placesOf(path, spots.length, keysOfWay(next), []).map((one) => [one, undefined] as const),
      `count ${wordOf(next, cropName).toLowerCase()}`,
    );
  };
  return (
    <fieldset class="layer counted" data-path={path}>
      <legend>{title}</legend>
      <Fields>
        <Field path={`${path}.case`} label="Case" choices={caseNames} none={null} />
        <Field
          path={`${path}.rowPosition`}
          label="Where the row is"
          hint="Such as wheel track; if empty, anywhere"
        />
        <div>
          <Field path={`${path}.rowWidth`} label="From row to row" hint="30 in or 75 cm" />
          <RowToWalk group={group} />
        </div>
      </Fields>
      {ways.length > 1 && (
        <Switch
          labelled
          label="What was counted"
          value={way}
          choices={[...new Set([...ways, way])].map((one) => [one, wordOf(one, cropName)] as const)}
          onChoose={choose}
        />
      )}
      <SpotsTable {...{ index, title, spots, columns }} />
      <ProblemNote id={`counts-${index}-spots-wrong`} problems={fieldState(`${path}.spots`).problems} />
      <p class="tools">
        <button
          type="button"
          class="small"
          onClick={() => editMany(addSpot(scenario.value, index), "chosen", `add a spot to ${title}`)}
        >
          Add a spot<span class="only-heard"> to {title}</span>
        </button>
        {!isWritten(spots, "rowLength") && !isWritten(spots, "area") && (
          <button
            type="button"
            class="small"
            aria-pressed={ownGround.value}
            onClick={() => (ownGround.value = !ownGround.value)}
          >
            A length of row for each spot<span class="only-heard"> of {title}</span>
          </button>
        )}
        <button
          type="button"
          class="small"
          onClick={() =>
            editMany(removeGroup(scenario.value, index), "chosen", `remove the counts of ${title}`)
          }
        >
          Remove these counts<span class="only-heard"> of {title}</span>
        </button>
      </p>
      <Weight path={path} way={way} cropName={cropName} />
      <More
        title="Length of row, moisture, how ripe"
        paths={["rowLength", "rows", "area", "moisture", "tradeMoisture", "stage"].map(
          (key) => `${path}.${key}`,
        )}
      >
        {() => (
          <Fields>
            <Field
              path={`${path}.rowLength`}
              label="Length of row at every spot"
              hint="If empty: what makes a thousandth of an acre"
              also={ground("rowLength")}
            />
            <Field
              path={`${path}.rows`}
              label="Rows side by side"
              hint="If empty: one"
              also={ground("rows")}
            />
            <Field
              path={`${path}.area`}
              label="Or the area of every spot"
              hint="1 m^2, 10 ft^2"
              also={ground("area")}
            />
            <Field
              path={`${path}.moisture`}
              label="Moisture of the kernels weighed"
              hint="Only where they were weighed: 18 %"
            />
            <Field path={`${path}.tradeMoisture`} label="Moisture as it is sold" />
            <Field path={`${path}.stage`} label="How ripe" none="not told" />
          </Fields>
        )}
      </More>
    </fieldset>
  );
}

/** What a count is multiplied by. Weighing it in one way takes out the others. */
function Weight({ path, way, cropName }: { path: string; way: Way; cropName: string }) {
  const at = (key: string) => `${path}.${key}`;
  const others = (key: string) => takesOut(path, key, alternatives.kernelWeight);
  if (way === "heads")
    return (
      <Fields title="What a head gives">
        <Field path={at("grainPerHead")} label="Grain of one head" hint="Weighed: 0.5 g" />
      </Fields>
    );
  if (way === "diameters")
    return (
      <Fields title="All spots">
        <Field path={at("seedSize")} label="Size of the seed" none="not judged: light to heavy" />
        <Field
          path={at("filled")}
          label="Filled seeds, all spots"
          hint="Where a spot has none of its own: 90 %"
        />
        <Field path={at("centre")} label="Middle of the heads, all spots" none="as filled, or told by spot" />
      </Fields>
    );
  const bushels = resolved.value?.yieldLine.unit.us === "bu/ac";
  return (
    <Fields title="What kernels weigh">
      <Field
        path={at("kernelWeight")}
        label="A thousand kernels"
        hint={`Weighed: ${usualThousand(cropName)}. If empty: a usual weight, with its range`}
        also={others("kernelWeight")}
      />
      {bushels && (
        <Field
          path={at("kernelsPerBushel")}
          label="Or kernels in a bushel"
          hint="90000"
          also={others("kernelsPerBushel")}
        />
      )}
      <Field
        path={at("kernelsPerPound")}
        label="Or kernels in a pound"
        hint="15500"
        also={others("kernelsPerPound")}
      />
      {cropNamed(cropName)?.name === "corn" && (
        <Field
          path={at("season")}
          label="Or the season that filled them"
          none="not told: the whole range"
          also={others("season")}
        />
      )}
    </Fields>
  );
}

/** Said while the width of rows is still being typed. */
function RowToWalk({ group }: { group: JsonGroup }) {
  const { rowWidth, rows, rowLength, area } = group;
  const across = typeof rows === "number" && rows >= 1 ? rows : 1;
  const length = typeof rowWidth === "string" ? rowToWalk(rowWidth, across, units.value) : null;
  if (length === null || area !== undefined) return null;
  const of = across === 1 ? "of row" : `of ${across} rows`;
  return (
    <p class="row-to-walk" role="status">
      {rowLength === undefined ? (
        <>
          Count <strong>{length}</strong> {of}: a thousandth of an acre.
        </>
      ) : (
        <>
          A thousandth of an acre would be <strong>{length}</strong> {of}.
        </>
      )}
    </p>
  );
}

/** An example of the right size. */
function usualThousand(cropName: string): string {
  const crop = cropNamed(cropName)?.name;
  return crop === "corn" ? "300 g" : crop === "grain sorghum" ? "28 g" : "35 g";
}

function titleOf({ case: name, rowPosition }: JsonGroup, index: number): string {
  const said = typeof name === "string" && name !== "" ? name : `Counts ${index + 1}`;
  return typeof rowPosition === "string" && rowPosition !== "" ? `${said}, ${rowPosition}` : said;
}

function outOf(keys: readonly string[], kept: readonly string[]): string[] {
  return keys.filter((key) => !kept.includes(key));
}

/** Keys of every spot, and of the whole table. */
function placesOf(path: string, spots: number, keys: readonly string[], own: readonly string[]): string[] {
  return [
    ...Array.from({ length: spots }, (_, s) => keys.map((key) => `${path}.spots[${s}].${key}`)).flat(),
    ...own.map((key) => `${path}.${key}`),
  ];
}
