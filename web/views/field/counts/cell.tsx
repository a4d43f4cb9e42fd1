import { useSignal } from "@preact/signals";
import { listText } from "../../../forms/listText.ts";
import { pastedCells } from "../../../forms/edits/pasted.ts";
import { endEdit, valueAt } from "../../../state/scenarioStore.ts";

interface CellProps {
  /** Place in the scenario. */
  readonly path: string;
  /** For the ear: what it is and of which row. */
  readonly label: string;
  readonly placeholder?: string | undefined;
  readonly wrong: boolean;
  /** Where it is told what is wrong, or how to fill in. */
  readonly describedBy: string;
  readonly onType: (text: string) => void;
  /** More than one cell pasted at once. */
  readonly onPaste: (cells: string[][]) => void;
  readonly wide?: boolean;
}

/** A cell to type in. While it is typed in it shows what was typed; the scenario may have split it up and added units already. */
export function Cell({ path, label, placeholder, wrong, describedBy, onType, onPaste, wide }: CellProps) {
  const typed = useSignal<string | null>(null);
  return (
    <div data-path={path}>
      <input
        type="text"
        autoComplete="off"
        spellcheck={false}
        class={wide ? "is-wide" : undefined}
        aria-label={label}
        aria-invalid={wrong || undefined}
        aria-describedby={describedBy}
        placeholder={placeholder}
        value={typed.value ?? listText(valueAt(path))}
        onInput={({ currentTarget: { value } }) => {
          typed.value = value;
          onType(value);
        }}
        onBlur={() => {
          typed.value = null;
          endEdit();
        }}
        onPaste={(event) => {
          const cells = pastedCells(event.clipboardData?.getData("text/plain") ?? "");
          if (cells === null) return;
          event.preventDefault();
          typed.value = null;
          onPaste(cells);
        }}
      />
    </div>
  );
}
