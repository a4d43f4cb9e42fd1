import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

/** The same as the picture, to be read: for those who cannot see it, and for checking. */
export interface PictureTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface FrameProps {
  /** What the picture shows, in a sentence: its accessible name. */
  readonly name: string;
  /** Shown under the picture. */
  readonly caption?: ComponentChildren;
  readonly table: PictureTable;
  readonly onSavePng?: () => void;
  readonly onSaveSvg?: () => void;
  /** Answers an older state, or is being worked out anew: drawn fainter. */
  readonly faint?: boolean;
  readonly children: ComponentChildren;
}

/** What every picture stands in: its name, its buttons, and its numbers as a table. */
export function PictureFrame({
  name,
  caption,
  table,
  onSavePng,
  onSaveSvg,
  faint = false,
  children,
}: FrameProps) {
  const id = useId();
  return (
    <figure class={faint ? "picture is-faint" : "picture"} aria-labelledby={id}>
      <div class="picture-drawing">{children}</div>
      <figcaption id={id} class={caption === undefined ? "only-heard" : undefined}>
        {caption ?? name}
      </figcaption>
      <div class="picture-tools">
        <details class="picture-table">
          <summary>Read as a table</summary>
          <div class="scrolls" tabIndex={0} role="region" aria-label={`${name}, as a table`}>
            <table>
              <caption class="only-heard">{name}</caption>
              <thead>
                <tr>
                  {table.head.map((cell) => (
                    <th key={cell} scope="col">
                      {cell}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {table.rows.map((row, r) => (
                  <tr key={r}>
                    {row.map((cell, c) =>
                      c === 0 ? (
                        <th key={c} scope="row">
                          {cell}
                        </th>
                      ) : (
                        <td key={c}>{cell}</td>
                      ),
                    )}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </details>
        {onSavePng && (
          <button type="button" class="small" onClick={onSavePng}>
            PNG<span class="only-heard"> of {name}</span>
          </button>
        )}
        {onSaveSvg && (
          <button type="button" class="small" onClick={onSaveSvg}>
            SVG<span class="only-heard"> of {name}</span>
          </button>
        )}
      </div>
    </figure>
  );
}
