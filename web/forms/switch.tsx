import { useId } from "preact/hooks";

interface SwitchProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [value: T, word: string])[];
  readonly onChoose: (value: T) => void;
  /** Shown too, not only heard. */
  readonly labelled?: boolean;
}

/** A few choices of which one holds, side by side. */
export function Switch<T extends string>({
  label,
  value,
  choices,
  onChoose,
  labelled = false,
}: SwitchProps<T>) {
  const name = useId();
  return (
    <fieldset class="switch">
      <legend class={labelled ? undefined : "only-heard"}>{label}</legend>
      {choices.map(([one, word]) => (
        <label key={one} class={one === value ? "is-on" : undefined}>
          <input
            type="radio"
            name={name}
            value={one}
            checked={one === value}
            onChange={() => onChoose(one)}
          />
          <span>{word}</span>
        </label>
      ))}
    </fieldset>
  );
}
