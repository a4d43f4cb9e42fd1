import "../style/wayIn.css";
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { cropNames } from "../../src/crop/crops.ts";
import { kinds } from "../../src/quantity/kinds.ts";
import {
  asDug,
  asLoose,
  nowhere,
  rotationsAsked,
  untilAnswered,
} from "../../src/scenario/say/fiveAnswers.ts";
import { textureClasses } from "../../src/soil/equations/texture.ts";
import { answersNow } from "../forms/edits/answersGiven.ts";
import { answers, scenario } from "../state/scenarioStore.ts";
import { units } from "../state/view.ts";
import { problems } from "../worker/client.ts";
import { AskChoice, AskText } from "./wayIn/answerFields.tsx";
import { assumed, assumedChoice, give, isAsked, isBlank, isExample } from "./wayIn/give.ts";
import { AskRain } from "./wayIn/rain.tsx";

/** A field of one's own in five answers; what they come to stands below them from the first one on. */
export function WayIn() {
  const section = useRef<HTMLElement>(null);
  const blank = isBlank();
  useEffect(() => {
    if (blank) section.current?.querySelector<HTMLElement>("select")?.focus({ preventScroll: true });
  }, [blank]);
  const isOpened = useSignal(false);
  if (!isAsked()) return null;
  const isOpen = !isExample() || isOpened.value;
  return (
    <section ref={section} class="way-in no-print" aria-labelledby="way-in-title">
      <h2 id="way-in-title">
        {isExample() ? (
          <button
            type="button"
            class="way-in-fold"
            aria-expanded={isOpen}
            onClick={() => {
              isOpened.value = !isOpened.value;
            }}
          >
            Your own field in five answers
          </button>
        ) : (
          "Your field"
        )}
      </h2>
      {isOpen && (
        <>
          <p class="aside">
            {isExample()
              ? "Your first answer replaces the example."
              : "What you have not answered is assumed as shown, and the result below changes with each answer."}
          </p>
          <Five />
        </>
      )}
    </section>
  );
}

function Five() {
  const now = answers.value === null ? {} : answersNow(answers.value, scenario.value);
  const isDense = now.dense !== undefined && now.dense !== nowhere;
  const depthUnit = kinds.depth[units.value].unit;
  const wrong = (place: RegExp) =>
    answers.value === null ? [] : problems.value.filter(({ field }) => place.test(field));
  return (
    <div class="way-in-fields">
      <AskChoice
        label="1. Soil texture"
        value={now.texture ?? ""}
        otherwise={assumedChoice(untilAnswered.texture)}
        problems={wrong(/^soil\.layers\[0\]\.texture/)}
        groups={[["", textureClasses.map((one) => [one, one] as const)]]}
        onGive={(texture) => void give({ texture })}
      />
      <AskChoice
        label="2. Dense layer"
        value={now.dense ?? ""}
        otherwise={assumedChoice("none")}
        problems={[]}
        groups={[["", denseChoices]]}
        onGive={(dense) =>
          void give(
            dense === undefined || dense === nowhere
              ? { dense, denseSpan: undefined, ...(now.deeper === asLoose ? { deeper: undefined } : {}) }
              : { dense },
          )
        }
      >
        {isDense && (
          <AskText
            label="Its depth"
            value={now.denseSpan ?? ""}
            otherwise={assumed(untilAnswered.denseSpan)}
            problems={wrong(/^soil\.layers\[\d\]\.(?:bottom|thickness)/)}
            unit={depthUnit}
            onGive={(denseSpan) => void give({ denseSpan }, "typed")}
          />
        )}
      </AskChoice>
      <AskRain now={now} problems={wrong(/^(?:weather|site)\b/)} />
      <AskChoice
        label="4. Crop or rotation"
        value={now.crop ?? ""}
        otherwise={assumedChoice(untilAnswered.crop)}
        problems={wrong(/^(?:crop\.name|rotation)/)}
        groups={[
          ["One crop", cropNames.map((one) => [one, one] as const)],
          ["A rotation", rotationsAsked.map((one) => [one, one] as const)],
        ]}
        onGive={(crop) => void give({ crop })}
      />
      <div class="way-in-last">
        <AskDeeper deeper={now.deeper ?? ""} isDense={isDense} problems={wrong(/^cases\[1\]/)} />
        {now.deeper === asDug && (
          <div class="way-in-dug">
            <AskText
              label={isDense ? "Deepest roots over the dense layer" : "Deepest roots of the shallower plants"}
              value={now.dugDense ?? ""}
              otherwise="24, 27, 21 in"
              problems={wrong(/^evidence\.rootDepths\[0\]\.depths/)}
              unit={depthUnit}
              onGive={(dugDense) => void give({ dugDense }, "typed")}
            />
            <AskText
              label={isDense ? "Where there is none" : "Of the deeper plants"}
              value={now.dugLoose ?? ""}
              otherwise="30, 32, 28 in"
              problems={wrong(/^evidence\.rootDepths\[1\]\.depths/)}
              unit={depthUnit}
              onGive={(dugLoose) => void give({ dugLoose }, "typed")}
            />
            {isDense && (
              <AskText
                label="Dug on"
                type="date"
                value={now.dugOn ?? ""}
                otherwise=""
                problems={wrong(/^evidence\.rootDepths\[\d\]\.date/)}
                unit=""
                onGive={(dugOn) => void give({ dugOn }, "typed")}
              />
            )}
          </div>
        )}
      </div>
    </div>
  );
}

const denseChoices = [
  [nowhere, "none"],
  ["tillage pan", "plow pan"],
  ["wheel track", "wheel track"],
  ["natural", "natural, such as a claypan"],
] as const;

/** A depth, or what tells it. */
function AskDeeper({
  deeper,
  isDense,
  problems: wrong,
}: {
  deeper: string;
  isDense: boolean;
  problems: typeof problems.value;
}) {
  const label = "5. Roots deeper by";
  const tells = [
    ...(isDense ? [[asLoose, "what loosening the layer brings"] as const] : []),
    [asDug, "what I dug"] as const,
  ];
  const told = tells.find(([value]) => value === deeper);
  if (told !== undefined)
    return (
      <AskChoice
        label={label}
        value={deeper}
        otherwise="a depth …"
        problems={wrong}
        groups={[["", tells]]}
        onGive={(next) => void give({ deeper: next })}
      />
    );
  return (
    <AskText
      label={label}
      value={deeper}
      otherwise={assumed(isDense ? "layer loosened" : untilAnswered.deeper, "depth")}
      problems={wrong}
      unit={kinds.depth[units.value].unit}
      onGive={(next) => void give({ deeper: next }, "typed")}
    >
      <p class="way-in-or">
        {isDense && deeper !== "" && (
          <button type="button" class="small" onClick={() => void give({ deeper: asLoose })}>
            Or by the dense layer loosened
          </button>
        )}
        <button type="button" class="small" onClick={() => void give({ deeper: asDug })}>
          Or what I dug
        </button>
      </p>
    </AskText>
  );
}
