import { Field } from "../../forms/field.tsx";
import { isList } from "../../state/json.ts";
import { edit, endEdit, valueAt } from "../../state/scenarioStore.ts";
import { Fields, Section } from "./section.tsx";

export function ScenarioSection() {
  return (
    <Section id="scenario">
      <Fields>
        <Field path="name" label="Name" />
        <Field
          path="invented"
          label="The data are invented"
          hint="Said on every result, so that nobody takes it for a place."
        />
      </Fields>
      <Notes />
    </Section>
  );
}

/** Notes are a text or a list of texts; here a line each. */
function Notes() {
  const notes = valueAt("notes");
  const text = isList(notes) ? notes.map(String).join("\n") : typeof notes === "string" ? notes : "";
  return (
    <div class="field" data-path="notes">
      <label for="inputs-notes">Notes, a line each</label>
      <textarea
        id="inputs-notes"
        rows={3}
        value={text}
        onInput={({ currentTarget: { value } }) => {
          const lines = value.split("\n");
          edit(
            "notes",
            value === "" ? undefined : lines.length === 1 ? value : lines,
            "typed",
            "type the notes",
          );
        }}
        onBlur={endEdit}
      />
    </div>
  );
}

export function SiteSection() {
  return (
    <Section id="site">
      <Fields>
        <Field
          path="site.latitude"
          label="Latitude"
          hint={"North or south, such as 38.5 N; for the sun and the seasons"}
        />
        <Field path="site.elevation" label="Elevation" hint="Above the sea: 3400 ft or 1036 m" />
        <Field path="site.setting" label="Setting" />
      </Fields>
    </Section>
  );
}
