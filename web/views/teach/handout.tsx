import { mmPerInch } from "../../../src/quantity/constants.ts";
import { signal, useSignal } from "@preact/signals";
import { useEffect, useId, useLayoutEffect, useRef } from "preact/hooks";
import { answerInFull } from "../../../src/report/sentences/firstLine.ts";
import { shownIn, type Formatters } from "../../../src/report/tables/formatters.ts";
import { printPalette, type Palette } from "../../pictures/kit/palette.ts";
import { rootedDepthMm } from "../../pictures/pit/pitWallLayout.ts";
import { sayDay } from "../../pictures/pit/pitWallReading.ts";
import { TwoRoots } from "../../pictures/roots/twoRoots.tsx";
import { twoRootsLayout } from "../../pictures/roots/twoRootsLayout.ts";
import { heldFront } from "../../pictures/roots/twoRootsTable.ts";
import { scenarioName } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answer, season, resolved } from "../../worker/client.ts";
import type { Answer, SeasonShown, ResolvedScenario } from "../../worker/protocol.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { question } from "./guess.tsx";
import { denseLayer, difference, pair, subject } from "./lesson.ts";
import { coveredFrom } from "./playing.ts";
import { questionsFor, titles } from "./subject.ts";
import { ThreeTold } from "./threeTold.tsx";

/** Set to print; it goes back when the printing is over. */
export const isHandoutAsked = signal(false);

/** What a Letter and an A4 page both have room for within 10 mm margins, mm, a little spared. */
const page = { widthMm: 188, heightMm: 255 } as const;
const mmPerPx = mmPerInch / 96;
const picture = { width: 760, height: 380 } as const;

/** Three that a class needs; all of the answer's own stand under the lesson. */
const handoutCautions = [
  "This is a model, not a field: pests, hail, lodging and nutrients are left out, and nothing moves sideways.",
  "The range is of weather and of what is not known of the soil. One field in one year can lie outside it.",
  "Before anyone digs, have buried lines located. A pit wall can fall in: nobody enters a deep pit.",
] as const;

const paper: Palette = { ...printPalette, paper: "#ffffff" };

/** One page for the class. It is there only while it goes to paper. */
export function Handout() {
  const [now, soil, shownSeason] = [answer.value, resolved.value, season.value];
  if (!isHandoutAsked.value || now === null || soil === null || shownSeason === null) return null;
  return <Sheet {...{ now, soil }} season={shownSeason} />;
}

interface SheetProps {
  readonly now: Answer;
  readonly soil: ResolvedScenario;
  readonly season: SeasonShown;
}

function Sheet({ now, soil, season: drawn }: SheetProps) {
  const sheet = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const element = sheet.current;
    if (element === null) return;
    // Many words are printed smaller rather than on a second page; a wider sheet has larger pictures, so it takes a few tries.
    let zoom = 1;
    element.style.setProperty("zoom", "1");
    for (let n = 0; n < 4; n++) {
      element.style.setProperty("width", `${page.widthMm / zoom}mm`);
      zoom = Math.min(zoom, page.heightMm / (element.scrollHeight * mmPerPx));
    }
    element.style.setProperty("width", `${page.widthMm / zoom}mm`);
    element.style.setProperty("zoom", String(zoom));
  }, [now, soil, drawn, units.value]);
  usePrinting();
  const shown = shownIn(units.value);
  const { comparison } = now;
  const told = difference.value;
  const d = differenceShown.value;
  const dense = denseLayer.value;
  const layers = dense === null ? [] : (soil.cases[dense.caseIndex]?.layers ?? []);
  const layer = dense === null ? undefined : layers[dense.index];
  const asked = layer === undefined ? null : { name: layer.name, isLast: layer === layers.at(-1) };
  return (
    <article ref={sheet} class="handout" style={{ width: `${page.widthMm}mm` }} aria-label="Handout">
      <header class="handout-head">
        <h2>{titles[subject.value]}</h2>
        <p>
          {scenarioName.value}
          {soil.invented && <strong> (invented: it shows the tool, not a place)</strong>}
        </p>
      </header>
      {told !== null && <p class="handout-question">{question(told)}</p>}
      <SoilPicture {...{ soil }} season={drawn} />
      {told !== null && (
        <p class="handout-blanks">
          My guess: <Blank /> {shown.length} <span />
          The class&rsquo;s guess: <Blank /> {shown.length} <span />
          Because: <Blank isLong />
        </p>
      )}
      <h3>To think about</h3>
      <ol>
        {questionsFor(subject.value, asked).map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ol>
      <p class="handout-fold">fold back along this line: the answer is below</p>
      <p class="handout-answer">{answerInFull(now.told[d]!)}</p>
      {told !== null && <ThreeTold {...{ told, comparison, d, shown }} />}
      <p class="handout-ripe">
        When the crop is ripe, {sayDay(drawn.firstDay + drawn.days - 1, drawn.isGenerated)}, roots reach:{" "}
        {depthsOn(drawn, drawn.days - 1, shown)}.
      </p>
      <h3>Keep in mind</h3>
      <ul class="handout-cautions">
        {handoutCautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </article>
  );
}

/** Space to write in. */
function Blank({ isLong = false }: { readonly isLong?: boolean }) {
  return <span class={isLong ? "blank is-long" : "blank"} role="img" aria-label="space to write in" />;
}

/** As the class sees it while it guesses: what the season ends with stands below the fold. */
function SoilPicture({ soil, season: drawn }: Omit<SheetProps, "now">) {
  const id = useId();
  const both = pair.value;
  const day = useSignal(coveredFrom(drawn));
  const shown = shownIn(units.value);
  const layers = both.map((c) => soil.cases[c]?.layers ?? []);
  const names = both.map((c) => drawn.cases[c]?.name ?? "");
  const layout = twoRootsLayout(picture.width, picture.height, names);
  const bottomMm = Math.max(...layers.map((some) => some.at(-1)?.bottomMm ?? 0));
  const cases = both.flatMap((c) => drawn.cases[c] ?? []);
  const date = sayDay(drawn.firstDay + day.value, drawn.isGenerated);
  const depths = depthsOn(drawn, day.value, shown);
  return (
    <figure>
      <svg
        viewBox={`0 0 ${picture.width} ${picture.height}`}
        role="img"
        aria-label={`Roots on ${date}: ${depths}`}
      >
        <TwoRoots
          season={drawn}
          pair={both}
          depthMm={rootedDepthMm({ ...drawn, cases }, bottomMm)}
          day={day}
          colours={paper}
          sayWorth={null}
          id={`handout${id}`}
          {...{ layers, layout, shown }}
        />
      </svg>
      <figcaption>
        {date}, in one season of {drawn.runs}. Roots reach: {depths}. Behind them, the water they can still
        take. The shape of the roots is drawn for the eye; their depth is worked out.
      </figcaption>
    </figure>
  );
}

/** `over the pan 44.3 in; pan loosened 48.1 in` */
function depthsOn(drawn: SeasonShown, day: number, shown: Formatters): string {
  return pair.value
    .flatMap((c) => drawn.cases[c] ?? [])
    .map((one) => `${one.name} ${shown.depth(heldFront(one, day) ?? 0)} ${shown.length}`)
    .join("; ");
}

/** Asks for paper once the sheet stands, and clears it away after. */
function usePrinting(): void {
  useEffect(() => {
    const root = document.documentElement;
    root.classList.add("prints-handout");
    const done = () => {
      isHandoutAsked.value = false;
    };
    addEventListener("afterprint", done);
    const timer = setTimeout(() => print(), 50);
    return () => {
      clearTimeout(timer);
      removeEventListener("afterprint", done);
      root.classList.remove("prints-handout");
    };
  }, []);
}
