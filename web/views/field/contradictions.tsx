import { answer } from "../../worker/client.ts";

/** Counts and strips that cannot both be right: said wherever one of them is shown. */
export function Contradictions() {
  const said = answer.value?.field.contradictions ?? [];
  if (said.length === 0) return null;
  return (
    <div class="caution" role="status">
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
