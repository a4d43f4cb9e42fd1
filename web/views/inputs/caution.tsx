import { answer } from "../../worker/client.ts";

/** Where a probe, a core or a pit is asked for. */
export function DiggingCaution() {
  return (
    <p class="caution">
      Before digging, probing or coring, have buried lines located. A pit wall can fall in: follow the local
      excavation rules.
    </p>
  );
}

/** Where a yield line is chosen: what the answer says of yield, as it says it. */
export function YieldCaution() {
  const said = (answer.value?.comparison.cautions ?? []).filter((caution) =>
    /^Yield|insurance|first grain|after flowering|around flowering/.test(caution),
  );
  if (said.length === 0) return null;
  return (
    <div class="caution">
      {said.map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}
