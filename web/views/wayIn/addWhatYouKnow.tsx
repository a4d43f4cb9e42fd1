import type { ComponentChildren } from "preact";
import { typeset } from "../../../src/report/tables/typeset.ts";
import type { DefaultUsed } from "../../../src/scenario/scenario.ts";
import { scenarioOfAnswers } from "../../../src/scenario/say/fiveAnswers.ts";
import { forThePage } from "../../forms/placeWords.ts";
import { Field } from "../../forms/field.tsx";
import { answersNow } from "../../forms/edits/answersGiven.ts";
import { layersOf } from "../../forms/edits/layerEdits.ts";
import type { Json } from "../../state/json.ts";
import { getAt } from "../../state/path.ts";
import { answers, scenario, valueAt } from "../../state/scenarioStore.ts";
import { addressOf, type LeafName } from "../../state/view.ts";
import { resolved } from "../../worker/client.ts";
import { cardOf } from "../inputs/cardPlan.ts";
import { isBlank } from "./give.ts";

/** What was assumed for a field of five answers, one thing at a time: what is known is typed in its place. */
export function AddWhatYouKnow() {
  if (answers.value === null || isBlank()) return null;
  const { scenario: written, told } = assumptions();
  const items = thingsToKnow(scenario.value).filter(({ paths }) => paths.length > 0);
  return (
    <section class="known no-print" aria-labelledby="known-title">
      <h2 id="known-title">Add what you know</h2>
      <p class="aside">Assumed until you change it. Water in the subsoil matters most.</p>
      <div class="known-items">
        {items.map(({ title, paths }) => {
          const isAssumed = paths.every(([path]) => {
            const value = valueAt(path);
            return value === undefined || JSON.stringify(value) === JSON.stringify(getAt(written, path));
          });
          const reason = paths.map(([path]) => told.get(path)?.why).find((one) => one !== undefined);
          return (
            // One name for all: the browser keeps only one of them open.
            <details key={title} name="known" class="known-item">
              <summary>
                <span class="known-title">{title}</span>{" "}
                <span class="known-value">
                  {paths
                    .map(([path]) => (isAssumed ? told.get(path)?.value : undefined) ?? shownAt(path))
                    .filter((one) => one !== null)
                    .join(", ")
                    .replace("cm^3", "cm³")}
                  {isAssumed && <em> (assumed)</em>}
                </span>
              </summary>
              <div class="field-grid">
                {paths.map(([path, label, hint]) => (
                  <Field key={path} path={path} label={label} {...(hint === undefined ? {} : { hint })} />
                ))}
              </div>
              {isAssumed && reason !== undefined && <p class="aside">Why: {reason}.</p>}
              <p class="aside">
                <a href={addressOf("inputs", { card: cardOf({ field: paths[0]![0] }) })}>
                  More of this, in Inputs
                </a>
              </p>
            </details>
          );
        })}
      </div>
      <p class="known-links">
        Measured in the field: <Leaf leaf="dig">plants dug</Leaf>, <Leaf leaf="samples">soil samples</Leaf>,{" "}
        <Leaf leaf="counts">ears and heads counted</Leaf>, <Leaf leaf="money">costs and prices</Leaf>. All
        else: <a href={addressOf("inputs")}>Inputs</a>.
      </p>
    </section>
  );
}

function Leaf({ leaf, children }: { leaf: LeafName; children: ComponentChildren }) {
  return <a href={addressOf("field", { leaf })}>{children}</a>;
}

type Known = readonly [path: string, label: string, hint?: string];

/** By what it moves most. */
function thingsToKnow(written: Json): { readonly title: string; readonly paths: readonly Known[] }[] {
  const layers = layersOf(written);
  const dense = layers.findIndex(({ origin }) => origin !== undefined);
  const has = (path: string) => getAt(written, path) !== undefined;
  const inRotation = has("rotation");
  return [
    {
      title: "Water in the soil at the start",
      paths: has("soil.startingWater.moistDepth")
        ? [
            ["soil.startingWater.moistDepth", "Moist down to", "As deep as a push probe goes in by hand"],
            ["soil.startingWater.shareBelow", "Below that", "Share of the available water"],
          ]
        : [
            [
              "soil.startingWater.share",
              "Share of the available water",
              "Everywhere, when the run begins: 0 % is wilting point, 100 % field capacity",
            ],
          ],
    },
    {
      title: "Bulk density of the dense layer",
      paths:
        dense < 0
          ? []
          : [
              [`soil.layers[${dense}].bulkDensity`, "Bulk density", "From a core: 1.55 g/cm^3"],
              [
                `soil.layers[${dense}].penetrationResistance`,
                "Or a penetrometer reading",
                "When moist: 300 psi",
              ],
            ],
    },
    {
      title: "Depth of the soil",
      paths: [
        [`soil.layers[${layers.length - 1}].bottom`, "Roots can go down to", "Where rock or caliche begins"],
      ],
    },
    {
      title: "Fallow and residue",
      paths: inRotation
        ? []
        : [
            ["fallow.length", "Fallow before sowing", "11 months or 330 days"],
            ["surface.residueCover", "Ground under residue"],
          ],
    },
    { title: "Sowing date", paths: [["crop.sowing", "Sowing date", "Such as Jun 1"]] },
    {
      title: "When the rain falls",
      paths: has("weather.pattern") ? [["weather.pattern", "Most of the rain falls"]] : [],
    },
    {
      title: "Where the field is",
      paths: [
        ["site.latitude", "Latitude", "Such as 38.5 N"],
        ["site.elevation", "Elevation", "Above the sea"],
      ],
    },
  ];
}

function assumptions(): { scenario: Json; told: ReadonlyMap<string, DefaultUsed> } {
  const { file, assumed } = scenarioOfAnswers(answersNow(answers.value ?? {}, scenario.value));
  return {
    scenario: file as Json,
    told: new Map(assumed.map((one) => [one.field, { ...one, why: forThePage(one.why) }])),
  };
}

/** What is written there, or what stands in for it; null where nothing does. */
function shownAt(path: string): string | null {
  const value = valueAt(path);
  if (typeof value === "string" || typeof value === "number") return typeset(String(value));
  // With a rotation the start is told as a whole: it is what the years before left.
  const places = [path, path.replace(/\.share$/, "")];
  return resolved.value?.defaults.find(({ field }) => places.includes(field))?.value ?? null;
}
