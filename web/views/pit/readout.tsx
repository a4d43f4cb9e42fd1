import { percent, shownIn, type Formatters } from "../../../src/report/tables/formatters.ts";
import { LineSample } from "../../pictures/kit/marks.tsx";
import { readingAt, sayDay, type Reading } from "../../pictures/pit/pitWallReading.ts";
import type { Palette } from "../../pictures/kit/palette.ts";
import { units } from "../../state/view.ts";
import type { LayerShown, SeasonShown } from "../../worker/protocol.ts";
import { Heard } from "./heard.tsx";
import { headDay, hover, probeMm } from "./playhead.ts";

interface ReadoutProps {
  readonly season: SeasonShown;
  readonly caseIndex: number;
  readonly layers: readonly LayerShown[];
  readonly colours: Palette;
}

/** Date, depth, water and fronts under the mouse, the finger or the keyboard's mark. */
export function Readout({ season, caseIndex, layers, colours }: ReadoutProps) {
  const { day, depthMm } = hover.value ?? { day: headDay.value, depthMm: probeMm.value };
  const reading = readingAt(season, caseIndex, layers, Math.min(day, season.days - 1), depthMm);
  const shown = shownIn(units.value);
  const several = season.cases.length > 1;
  return (
    <>
      <dl class="readout">
        <div class="readout-date">
          <dt>{stageInWords(reading)}</dt>
          <dd>{sayDay(reading.date, season.isGenerated)}</dd>
        </div>
        <div>
          <dt>Rain{reading.snowMm > 0.05 ? " and snow" : ""}</dt>
          <dd>
            {shown.fineWater(reading.rainMm)} {shown.length}
          </dd>
        </div>
        <div class="readout-water">
          <dt>
            Water at {shown.depth(reading.depthMm)} {shown.length}
            {reading.layer === null ? "" : `, ${reading.layer}`}
          </dt>
          <dd>{reading.share === null ? "–" : percent(reading.share)}</dd>
        </div>
        <div>
          <dt>Water in reach</dt>
          <dd>
            {reading.inReachMm === null ? "–" : `${shown.fineWater(reading.inReachMm)} ${shown.length}`}
          </dd>
        </div>
        {reading.fronts.map(({ name, mm }, c) => (
          <div key={name} class="readout-front">
            <dt>
              <LineSample c={c} colours={colours} /> {several ? name : "root front"}
            </dt>
            <dd>{mm === null ? "–" : `${shown.depth(mm)} ${shown.length}`}</dd>
          </div>
        ))}
      </dl>
      <Heard said={inWords(reading, season.isGenerated, shown)} />
    </>
  );
}

function stageInWords({ stage, sinceSowing }: Reading): string {
  if (sinceSowing < 0) return `${stage}, ${-sinceSowing} ${-sinceSowing === 1 ? "day" : "days"} to sowing`;
  return sinceSowing === 0 ? `${stage}, sown today` : `${stage}, day ${sinceSowing}`;
}

function inWords(reading: Reading, isGenerated: boolean, shown: Formatters): string {
  const water =
    reading.share === null
      ? ""
      : ` At ${shown.depth(reading.depthMm)} ${shown.length} the soil is ${percent(reading.share)} full.`;
  const fronts = reading.fronts
    .filter(({ mm }) => mm !== null)
    .map(({ name, mm }) => `${name}: ${shown.depth(mm ?? 0)} ${shown.length}`);
  const roots = fronts.length === 0 ? " No roots." : ` Roots, ${fronts.join("; ")}.`;
  return `${sayDay(reading.date, isGenerated)}, ${stageInWords(reading)}.${water}${roots}`;
}
