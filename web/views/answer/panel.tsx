import type { ComponentChildren } from "preact";
import { useRoom } from "./room.ts";

interface PanelProps {
  readonly title: string;
  /** What is to be seen in it, in a sentence. */
  readonly lead?: ComponentChildren;
  readonly class?: string;
  /** Draws in the room there is, px. */
  readonly children: (widthPx: number) => ComponentChildren;
}

/** A part of the answer: what it is, what it says, and the picture of it. */
export function Panel({ title, lead, class: name = "", children }: PanelProps) {
  const [room, widthPx] = useRoom<HTMLDivElement>();
  return (
    <section class={`panel ${name}`}>
      <h2>{title}</h2>
      {lead !== undefined && <p class="panel-lead">{lead}</p>}
      <div ref={room} class="panel-room">
        {children(widthPx)}
      </div>
    </section>
  );
}
