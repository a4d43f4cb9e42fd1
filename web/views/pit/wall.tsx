import { signal, useSignal, type Signal } from "@preact/signals";
import { useEffect, useId, useLayoutEffect, useMemo, useRef } from "preact/hooks";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { Switch } from "../../forms/switch.tsx";
import { saveText, saveUrl, svgText, svgToPng } from "../../pictures/kit/download.ts";
import { PictureFrame } from "../../pictures/kit/frame.tsx";
import { palette } from "../../pictures/kit/palette.ts";
import { defaults, PitWall } from "../../pictures/pit/pitWall.tsx";
import { LineSample } from "../../pictures/kit/marks.tsx";
import type { Window } from "../../pictures/kit/box.ts";
import { pitWallLayout, rootedDepthMm } from "../../pictures/pit/pitWallLayout.ts";
import { pitWallTable } from "../../pictures/pit/pitWallTable.ts";
import { useScreenHeight } from "../screenHeight.ts";
import { isPrinting } from "../../state/theme.ts";
import { units } from "../../state/view.ts";
import { stale } from "../../worker/client.ts";
import type { SeasonShown, ResolvedScenario } from "../../worker/protocol.ts";
import { Boundaries } from "./boundaries.tsx";
import { Glass } from "./glass.tsx";
import { PlayBar } from "./playBar.tsx";
import { firstShownDay, headDay } from "./playhead.ts";
import { Readout } from "./readout.tsx";

/** The crop's time alone: over a long fallow three fronts look like one. Stays while other views are looked at. */
const onlyCrop = signal(true);

interface WallProps {
  readonly resolved: ResolvedScenario;
  readonly season: SeasonShown | null;
  readonly chosenCase: Signal<number>;
}

/** The picture with all that moves it. */
export function Wall({ resolved, season, chosenCase }: WallProps) {
  const id = useId();
  const svg = useRef<SVGSVGElement>(null);
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const isWhole = useSignal(false);
  const heldDepthMm = useSignal<number | null>(null);

  // A case that was taken out since is no longer looked at.
  const count = season?.cases.length ?? resolved.cases.length;
  const caseIndex = Math.min(chosenCase.value, count - 1);
  const layers = (resolved.cases[caseIndex] ?? resolved.cases[0]!).layers;
  const bottomMm = Math.max(...resolved.cases.map((one) => one.layers.at(-1)?.bottomMm ?? 0));
  const rootedMm = season === null || isWhole.value ? bottomMm : rootedDepthMm(season, bottomMm);
  const fallowEnds = season === null ? 0 : Math.min(...season.cases.map(sownOn));
  const fromDay = onlyCrop.value ? Math.max(0, fallowEnds - 7) : 0;
  const toDay = Math.max(fromDay + 1, season?.days ?? 1);
  const depthMm = heldDepthMm.value ?? rootedMm;
  const window = useMemo<Window>(() => ({ fromDay, toDay, depthMm }), [fromDay, toDay, depthMm]);
  useEffect(() => {
    firstShownDay.value = fromDay;
  }, [fromDay]);

  const shown = shownIn(units.value);
  const colours = palette();
  const screenPx = useScreenHeight();
  const layout = useMemo(() => pitWallLayout(width, screenPx), [width, screenPx]);
  const table = useMemo(
    () => (season === null ? { head: [], rows: [] } : pitWallTable(season, caseIndex, layers, units.value)),
    [season, caseIndex, layers, units.value],
  );
  const named = count > 1;
  const tools =
    season === null ? null : (
      <div class="pit-tools no-print">
        {named && (
          <CaseSwitch
            names={season.cases.map(({ name }) => name)}
            chosen={caseIndex}
            onChoose={(c) => (chosenCase.value = c)}
          />
        )}
        {rootedDepthMm(season, bottomMm) < bottomMm && (
          <Switch
            label="Depth"
            labelled
            value={isWhole.value ? "all" : "roots"}
            choices={[
              ["roots", "to the roots"],
              ["all", "all the soil"],
            ]}
            onChoose={(chosen) => (isWhole.value = chosen === "all")}
          />
        )}
        {fallowEnds > 14 && (
          <Switch
            label="Dates"
            labelled
            value={onlyCrop.value ? "crop" : "all"}
            choices={[
              ["crop", "crop only"],
              ["all", "with fallow"],
            ]}
            onChoose={(chosen) => (onlyCrop.value = chosen === "crop")}
          />
        )}
      </div>
    );
  return (
    <>
      {tools !== null &&
        (layout.wide ? (
          tools
        ) : (
          <details class="pit-more no-print">
            <summary>What the picture shows</summary>
            {tools}
          </details>
        ))}
      {season !== null && <Readout {...{ season, caseIndex, layers, colours }} />}
      {season !== null && <PlayBar />}
      <PictureFrame
        name={defaults.name}
        table={table}
        faint={stale.value}
        caption={
          <>
            Left: the soil as in a pit; drag the edges of layers to move them. Right: plant-available water
            day by day
            {named ? ` of “${season?.cases[caseIndex]?.name ?? resolved.cases[caseIndex]?.name ?? ""}”` : ""},
            with every root front over it. A layer that slows roots is marked with the share of their pace
            that they keep there in the season shown.
          </>
        }
        {...(season === null
          ? {}
          : {
              onSavePng: () => {
                if (svg.current === null) return;
                void svgToPng(svg.current, colours.paper).then((url) =>
                  saveUrl(`${defaults.fileName}.png`, url),
                );
              },
              onSaveSvg: () => {
                if (svg.current !== null)
                  saveText(`${defaults.fileName}.svg`, svgText(svg.current), "image/svg+xml");
              },
            })}
      >
        <div ref={place} class="pit-wall" data-drawn={season === null ? undefined : "yes"}>
          <PitWall
            {...{ layers, season, caseIndex, layout, window, colours, shown, svg }}
            id={`pit${id}`}
            day={headDay}
          />
          <div class="pit-over no-print">
            {season !== null && <Glass {...{ season, layout, window }} />}
            <Boundaries
              {...{ layers, caseIndex, layout, window }}
              onHold={(isHeld) => (heldDepthMm.value = isHeld ? depthMm : null)}
            />
          </div>
        </div>
      </PictureFrame>
    </>
  );
}

interface CaseSwitchProps {
  readonly names: readonly string[];
  readonly chosen: number;
  readonly onChoose: (c: number) => void;
}

/** Whose water is shown; at the same time the key to the fronts. */
export function CaseSwitch({ names, chosen, onChoose }: CaseSwitchProps) {
  const name = useId();
  return (
    <fieldset class="switch case-switch">
      <legend>Water of</legend>
      {names.map((word, c) => (
        <label key={c} class={c === chosen ? "is-on" : undefined}>
          <input type="radio" name={name} checked={c === chosen} onChange={() => onChoose(c)} />
          <LineSample c={c} colours={palette()} />
          <span>{word}</span>
        </label>
      ))}
    </fieldset>
  );
}

function sownOn({ startsAt, sowingDay }: SeasonShown["cases"][number]): number {
  return startsAt + sowingDay;
}

/** Of the room there is, px; before it has been measured that of a desktop screen. */
function useWidth(place: { current: HTMLElement | null }): number {
  const width = useSignal(1200);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return undefined;
    const measure = () => {
      // On paper the drawing is scaled as it stands.
      if (element.clientWidth > 0 && !isPrinting.peek()) width.value = element.clientWidth;
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return width.value;
}
