import { kgPerPound, mmPerInch } from "../../../src/quantity/constants.ts";
import { sayNumber, sayQuantity } from "../../../src/quantity/sayQuantity.ts";
import { kgPerHaOfUs, slopeOfUsPerInch } from "../../../src/crop/yield/yieldLine.ts";
import { cropNamed } from "../../../src/crop/crops.ts";
import { cropLines, usualLine, type CropLines, type LineChoice } from "../../../src/crop/yield/yieldLines.ts";
import { Field } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { sayDefault } from "../../forms/sayDefault.ts";
import { sayMark, sayWhy } from "../../forms/sayWhy.ts";
import { edit, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { defaultsByPath, resolved } from "../../worker/client.ts";
import { YieldCaution } from "./caution.tsx";
import { Fields, More, Section } from "./section.tsx";

const ownKeys = ["slope", "threshold", "cap", "unit", "testWeight", "source"].map((key) => `yield.${key}`);

export function YieldSection() {
  const name = valueAt("crop.name");
  const crop = typeof name === "string" ? cropNamed(name)?.name : undefined;
  const lines = cropLines.find((one) => one.crop === crop);
  const own = ownKeys.some((path) => valueAt(path) !== undefined);
  // With US units a yield is counted as this crop's is: a number typed alone is taken so too.
  const counted = units.value === "us" ? resolved.value?.yieldLine.unit.us : undefined;
  const slopeUnit = counted === undefined ? undefined : `${counted}/in`;
  return (
    <Section id="yield">
      <p class="aside">
        Yield = slope × (water use − threshold). The slope is the extra yield of an extra inch; it is not
        yield divided by water.
      </p>
      {lines === undefined ? (
        <p>There is no published line of this crop here: give slope and threshold.</p>
      ) : (
        <Published lines={lines} />
      )}
      <More title="Numbers of your own" paths={ownKeys} open={own || lines === undefined}>
        {() => (
          <>
            <ProblemNote id="inputs-slope-wrong" problems={fieldState("yield.slope").problems} />
            <Fields>
              <Field
                path="yield.slope.low"
                label="Slope, low end"
                unit={slopeUnit}
                hint={`Give all three; for example ${units.value === "us" ? "3 bu/ac/in" : "7 kg/ha/mm"}`}
                otherwise={publishedSlope(0)}
              />
              <Field
                path="yield.slope.middle"
                label="Slope, middle"
                unit={slopeUnit}
                otherwise={publishedSlope(1)}
              />
              <Field
                path="yield.slope.high"
                label="Slope, high end"
                unit={slopeUnit}
                otherwise={publishedSlope(2)}
              />
              <Field
                path="yield.threshold"
                label="Threshold"
                hint="Water use below which there is no grain"
              />
              <Field
                path="yield.cap"
                label="Yield at most"
                unit={counted}
                hint={`For example ${units.value === "us" ? "90 bu/ac" : "5600 kg/ha"}`}
              />
              <Field path="yield.unit" label="Counted in" none="as the crop usually is" />
              <Field path="yield.testWeight" label="Mass of a bushel" hint="56 lb/bu" />
              <Field path="yield.source" label="Where it comes from" hint="Place, years, trial" />
            </Fields>
          </>
        )}
      </More>
      {(own || lines === undefined) && <InUse />}
      <YieldCaution />
    </Section>
  );
}

/** The crop's published lines: where, when, by whom. */
function Published({ lines }: { lines: CropLines }) {
  const place = fieldState("yield.line");
  const usual = usualLine(lines, resolved.value?.site.latitudeDeg ?? null);
  const chosen = place.text === "" ? usual : place.text;
  return (
    <fieldset class="lines" data-path="yield.line">
      <legend>Published lines of {lines.crop}</legend>
      {lines.choices.map((line) => (
        <label key={line.name} class="line-choice">
          <input
            type="radio"
            name="inputs-yield-line"
            checked={line.name.toLowerCase() === chosen.trim().toLowerCase()}
            onChange={() =>
              edit(
                "yield.line",
                line.name === usual ? undefined : line.name,
                "chosen",
                `choose the yield line of ${line.name}`,
              )
            }
          />
          <span>
            <strong>{line.name}</strong>
            {line.name === usual && " (the usual one here)"}
            {line.region !== line.name && <span class="line-said">For: {line.region}</span>}
            <span class="line-said">{lineSaid(lines, line)}</span>
            <span class="line-source">
              {line.source} ({line.locator}; {sayMark(line.mark)}
              {line.thresholdMark === line.mark ? "" : `; threshold ${sayMark(line.thresholdMark)}`})
              {line.note === null ? "" : `. ${withCapital(line.note)}`}
            </span>
          </span>
        </label>
      ))}
      <ProblemNote id="inputs-line-wrong" problems={place.problems} />
      <p class="field-hint">
        Each crop has a line of its own, from its own place and years: comparing two crops is comparing two
        lines.
      </p>
      {lines.cap !== null && (
        <p class="field-hint">
          At most {sayYield(lines, lines.cap.us)}: {lines.cap.source} ({sayMark(lines.cap.mark)}).
        </p>
      )}
      {lines.seasons !== null && (
        <p class="field-hint">
          Water beyond the season's rain and {sayQuantity(lines.seasons.ordinaryDrawMm, "rain", units.value)}{" "}
          from the soil is worth more in a dry season than in a wet one, as the season's own rain picks (
          {lines.seasons.source}; {sayMark(lines.seasons.mark)}).
        </p>
      )}
      <p class="field-hint">
        Slope range ({sayMark(lines.slopeMark)}): {lines.slopeWhy}.
      </p>
      {lines.storedInch !== null && (
        <p class="field-hint">
          {lines.storedInch.note} ({lines.storedInch.source}; {sayMark(lines.storedInch.mark)})
        </p>
      )}
    </fieldset>
  );
}

function withCapital(said: string): string {
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** A yield published in US units, in the units shown. */
function sayYield({ us, lbPerUsUnit }: CropLines, yieldUs: number): string {
  if (units.value === "us") return `${sayNumber(yieldUs, 0)} ${us}`;
  return sayQuantity(
    kgPerHaOfUs(yieldUs, { us, kgPerUsUnit: lbPerUsUnit * kgPerPound }),
    "yieldPerArea",
    "metric",
  );
}

/** Published in inches and US yields; said in the units shown. */
function lineSaid(
  { us, lbPerUsUnit, slopeUsPerInch }: CropLines,
  { place, years, thresholdIn, slopeUsPerInch: own, name }: LineChoice,
): string {
  const { low, middle, high } = slopeUsPerInch;
  const where = name.includes(place) ? "" : `${place}; `;
  const when = years === null ? "" : `${years}; `;
  const usual = own ?? middle;
  const [least, most] = [Math.min(low, usual), Math.max(high, usual)];
  if (units.value === "us")
    return `${where}${when}${usual} ${us} per inch (${least} to ${most}) above ${thresholdIn} in`;
  const metric = (slope: number) =>
    sayNumber(slopeOfUsPerInch(slope, { us, kgPerUsUnit: lbPerUsUnit * kgPerPound }), 1);
  const above = sayQuantity(thresholdIn * mmPerInch, "depth", "metric");
  return `${where}${when}${metric(usual)} kg/ha per mm (${metric(least)} to ${metric(most)}) above ${above}`;
}

/** The published slope's low end, middle or high end, while none is written: its default tells all three. */
function publishedSlope(end: 0 | 1 | 2): string | undefined {
  const usual = defaultsByPath.value.get("yield.slope");
  const one = usual?.value.split(", ")[end];
  return one === undefined || usual === undefined ? undefined : `${sayDefault(one)} (${sayWhy(usual.why)})`;
}

/** The line that the answer stands on. */
function InUse() {
  const source = resolved.value?.yieldLine.source;
  if (source === undefined) return null;
  return (
    <p class="in-use">
      <strong>In use:</strong> {sayWhy(source)}
    </p>
  );
}
