import { Switch } from "../../forms/switch.tsx";
import { answer } from "../../worker/client.ts";
import { differenceShown, showDifference } from "./chosenDifference.ts";

/** Which case is set against the first; nothing where there is no choice. */
export function WhichDifference() {
  const differences = answer.value?.comparison.differences ?? [];
  if (differences.length < 2) return null;
  return (
    <div class="which no-print">
      <Switch
        labelled
        label={`Against “${differences[0]!.from}”`}
        value={String(differenceShown.value)}
        choices={differences.map(({ to }, d) => [String(d), to] as const)}
        onChoose={(d) => showDifference(Number(d))}
      />
    </div>
  );
}
