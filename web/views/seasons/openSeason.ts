import { batch } from "@preact/signals";
import { addressOf, chosenRun, chosenTotal, playDay, view } from "../../state/view.ts";

/** Where a run is found on the pit wall. */
export function addressOfRun(run: number): string {
  const [route = "", query = ""] = addressOf("pit").split("?");
  const said = new URLSearchParams(query);
  said.set("run", String(run + 1));
  said.delete("total");
  said.delete("day");
  return `${route}?${said.toString()}`;
}

/** Opens a run on the pit wall, at the total the seasons are drawn for. One step of the browser's history. */
export function openSeason(event: MouseEvent, run: number): void {
  if (event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return; // a tab of its own
  event.preventDefault();
  batch(() => {
    chosenRun.value = run;
    chosenTotal.value = null;
    playDay.value = null;
    view.value = "pit";
  });
}
