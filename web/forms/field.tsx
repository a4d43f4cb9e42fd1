import type { ComponentChildren } from "preact";
import { useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { kinds, type QuantityKind } from "../../src/quantity/kinds.ts";
import { edit, editMany, endEdit } from "../state/scenarioStore.ts";
import type { Json } from "../state/json.ts";
import type { Changes } from "../state/path.ts";
import type { FormField } from "../../src/scenario/say/formFields.ts";
import { BareNote } from "./bareNote.tsx";
import { dayTyped, fallowUnit, isDay } from "./dayTyped.ts";
import { equivalent } from "./equivalent.ts";
import { formOf } from "./formOf.ts";
import { listText, textList } from "./listText.ts";
import { DefaultNote, InheritNote, ProblemNote } from "./notes.tsx";
import { fieldState } from "./place.tsx";
import { sayDefault } from "./sayDefault.ts";
import { units } from "../state/view.ts";
import { listWithUnits, withUnit } from "./withUnit.ts";

export interface FieldProps {
  /** Place in the scenario: `soil.layers[1].bulkDensity`. */
  readonly path: string;
  readonly label: string;
  /** How to find the number out; short. */
  readonly hint?: string;
  /** Where its default is told, when that is another place. */
  readonly defaultPath?: string;
  /** Label for the ear only, as in a table whose head says it. */
  readonly quiet?: boolean;
  /** Changes that go with writing here, in the same step of undo: another way of saying the same is taken out. */
  readonly also?: (value: Json | undefined) => Changes;
  /** What holds while nothing is written, in words, where that is no default but another field's value. */
  readonly otherwise?: string | undefined;
}

interface TextProps extends FieldProps {
  /** A number typed alone is taken in the unit that the page shows for this kind. */
  readonly kind?: QuantityKind | undefined;
  /** In place of the kind's unit: bushels of a crop that is counted in them. */
  readonly unit?: string | undefined;
}

interface ChoiceProps extends FieldProps {
  readonly choices: readonly string[];
  /** Word for leaving it out; null = it cannot be left out. */
  readonly none?: string | null;
}

/**
 * The control that the scenario wants at a place; its kind of quantity and its choices come from the fields themselves. Choices
 * are given here only where they are names of the scenario, a kind only where another field decides between two.
 */
export function Field(props: TextProps & Partial<ChoiceProps>) {
  const { as, kind, choices = [] } = formOf(props.path);
  if (as === "choice" || props.choices !== undefined) return <Choice choices={choices} {...props} />;
  return as === "switch" ? <Toggle {...props} /> : <TextLike kind={kind} {...props} as={as} />;
}

/** Characters that a field has room for; what is longer stands under it only. */
const roomInField = 24;

type As = Exclude<FormField["as"], "choice" | "switch">;

/**
 * A quantity, typed with its unit: "14 in", "355 mm", a plain number, a text, or several quantities with a comma and a space
 * between them. A number alone is kept with the unit shown, and is seen with it once the field is left. Whatever else is typed
 * is kept, right or wrong; emptied, the field is left out of the scenario and its default holds.
 */
function TextLike({
  path,
  label,
  hint,
  defaultPath,
  quiet = false,
  also,
  otherwise,
  kind,
  unit = kind === undefined ? "" : kinds[kind][units.value].unit,
  as,
}: TextProps & { as: As }) {
  const id = useId();
  // While it is typed in, a field shows what was typed; the scenario has its unit already.
  const typing = useSignal<{ readonly shown: string; readonly kept: string } | null>(null);
  const place = fieldState(path, defaultPath, as === "list");
  const text = as === "list" ? listText(place.value) : place.text;
  const wrong = place.problems.length > 0;
  const noted = place.value === undefined && (place.fallback !== null || otherwise !== undefined);
  const alike = kind === undefined || wrong ? null : equivalent(text, kind, units.value);
  const ids = [
    hint && `${id}-hint`,
    alike !== null && `${id}-alike`,
    wrong ? `${id}-wrong` : noted && `${id}-default`,
  ];
  const fallback = otherwise ?? (place.fallback === null ? undefined : sayDefault(place.fallback.value));
  const write = (written: string) => {
    const whole =
      as === "quantity"
        ? withUnit(written, path.endsWith("fallow.length") ? fallowUnit(written) : unit)
        : as === "list"
          ? listWithUnits(written, unit)
          : isDay(path)
            ? dayTyped(written, units.value)
            : written;
    typing.value = whole === written ? null : { shown: written, kept: whole };
    const value = asWritten(whole, as);
    editMany([[path, value], ...(also?.(value) ?? [])], "typed", `type ${label}`);
  };
  return (
    <div class={`field field-${as}${wrong ? " is-wrong" : ""}`} data-path={path}>
      <label for={id} class={quiet ? "only-heard" : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        inputMode={as === "number" ? "decimal" : undefined}
        autoComplete="off"
        spellcheck={false}
        value={typing.value?.kept === text ? typing.value.shown : text}
        placeholder={fallback !== undefined && fallback.length <= roomInField ? fallback : undefined}
        aria-invalid={wrong || undefined}
        aria-describedby={ids.filter(Boolean).join(" ") || undefined}
        onInput={(event) => write(event.currentTarget.value)}
        onBlur={() => {
          typing.value = null;
          endEdit();
        }}
      />
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {alike !== null && (
        <p class="field-default" id={`${id}-alike`}>
          ≈ {alike}
        </p>
      )}
      {kind !== undefined && <BareNote text={text} kind={kind} onMend={write} />}
      <ProblemNote id={`${id}-wrong`} problems={place.problems} />
      {!wrong &&
        noted &&
        (otherwise === undefined ? (
          <DefaultNote id={`${id}-default`} place={place} />
        ) : (
          <InheritNote id={`${id}-default`} otherwise={otherwise} />
        ))}
    </div>
  );
}

/** Nothing typed is nothing written; a plain number goes in as one only where the scenario wants one. */
function asWritten(text: string, as: As): Json | undefined {
  if (text.trim() === "") return undefined;
  if (as === "list") return textList(text);
  return as === "number" && /^\s*-?\d+(\.\d+)?\s*$/.test(text) ? Number(text) : text;
}

/** One of a few words; the first line leaves it out. */
function Choice({
  path,
  label,
  hint,
  defaultPath,
  quiet = false,
  choices,
  none = "as usual",
  otherwise,
  also,
}: ChoiceProps) {
  const id = useId();
  const place = fieldState(path, defaultPath);
  const wrong = place.problems.length > 0;
  const usual = otherwise ?? (place.fallback === null ? undefined : sayDefault(place.fallback.value));
  const fallback = usual === undefined ? none : `${usual} (${none})`;
  // What is written but is no choice stays to be seen.
  const all = place.text === "" || choices.includes(place.text) ? choices : [place.text, ...choices];
  return (
    <div class={`field field-choice${wrong ? " is-wrong" : ""}`} data-path={path}>
      <label for={id} class={quiet ? "only-heard" : undefined}>
        {label}
      </label>
      <select
        id={id}
        value={place.text}
        aria-invalid={wrong || undefined}
        aria-describedby={wrong ? `${id}-wrong` : hint ? `${id}-hint` : undefined}
        onChange={(event) => {
          const value = event.currentTarget.value === "" ? undefined : event.currentTarget.value;
          editMany([[path, value], ...(also?.(value) ?? [])], "chosen", `choose ${label}`);
        }}
      >
        {none !== null && <option value="">{fallback}</option>}
        {all.map((word) => (
          <option key={word} value={word}>
            {word}
          </option>
        ))}
      </select>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <ProblemNote id={`${id}-wrong`} problems={place.problems} />
      {!wrong && otherwise === undefined && <DefaultNote id={`${id}-default`} place={place} />}
    </div>
  );
}

/** Yes or no; off leaves it out. */
function Toggle({ path, label, hint }: FieldProps) {
  const id = useId();
  const place = fieldState(path);
  return (
    <div class="field field-toggle" data-path={path}>
      <label>
        <input
          type="checkbox"
          checked={place.value === true}
          aria-describedby={hint ? `${id}-hint` : undefined}
          onChange={(event) =>
            edit(path, event.currentTarget.checked ? true : undefined, "chosen", `switch ${label}`)
          }
        />{" "}
        {label}
      </label>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <ProblemNote id={`${id}-wrong`} problems={place.problems} />
    </div>
  );
}

/** Fields that belong together. */
export function FieldGroup({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <fieldset class="field-group">
      <legend>{title}</legend>
      <div class="field-grid">{children}</div>
    </fieldset>
  );
}
