import { useState } from "preact/hooks";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { Switch } from "../../forms/switch.tsx";
import { OverRainPicture } from "../../pictures/answer/overRain.tsx";
import type { OverRainOf } from "../../pictures/answer/overRainLayout.ts";
import { busy } from "../../worker/client.ts";
import type { Comparison } from "../../../src/answer/comparison/comparison.ts";
import type { OwnRain } from "./ownRain.ts";
import { Panel } from "./panel.tsx";

interface OverOwnRainProps {
  readonly own: OwnRain;
  readonly comparison: Comparison;
  readonly d: number;
  readonly title: string;
  readonly shown: Formatters;
}

/** What the depth brought in each year, at the rain that the year had. */
export function OverOwnRain({ own, comparison, d, title, shown }: OverOwnRainProps) {
  const [of, setOf] = useState<OverRainOf>("water");
  const [part, setPart] = useState(0);
  const { said, over } = own.parts[part] ?? own.parts[0]!;
  const { from, to } = comparison.differences[d]!;
  const { kgPerHaPerUnit } = comparison.method.yieldLine;
  const units = {
    of,
    shown,
    yieldUnit: comparison.cases[0]!.yield.unit,
    yieldFactor: 1 / kgPerHaPerUnit,
  };
  const of10 =
    over.bands.length > 0 ? ", in each stretch of rain the typical year and a band for eight of ten" : "";
  const count = `${over.years.length} years${said === "" ? "" : `, ${said.toLowerCase()}`}`;
  return (
    <Panel
      title={title}
      class="panel-wide"
      lead={`What “${to}” brought over “${from}” in each year, at the rain which that year had${of10}.`}
    >
      {(width) => (
        <>
          <div class="own-rain-choices no-print">
            <Switch
              label="What the picture shows"
              value={of}
              choices={[
                ["water", "Extra water"],
                ["yield", "Extra yield"],
              ]}
              onChoose={setOf}
            />
            {own.parts.length > 1 && (
              <Switch
                label="Which years"
                value={String(part)}
                choices={own.parts.map((one, i) => [String(i), one.said] as const)}
                onChoose={(one) => setPart(Number(one))}
              />
            )}
          </div>
          <OverRainPicture
            {...{ over, units, width }}
            c={d + 1}
            faint={busy.value}
            name={`${title}: ${of === "water" ? "extra water" : "extra yield"} of “${to}” over “${from}” against each year's own rain, ${count}`}
            caption={`A dot is a year: ${count}. Rain is that of the calendar year of sowing.`}
          />
        </>
      )}
    </Panel>
  );
}
