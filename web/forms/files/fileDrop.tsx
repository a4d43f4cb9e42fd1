import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { largestFile } from "./largestFile.ts";

interface FileDropProps {
  /** On the button: "Choose a weather file". */
  readonly label: string;
  readonly accept: string;
  readonly onText: (name: string, text: string) => void;
  /** What to bring, in words. */
  readonly children: ComponentChildren;
}

/** A place to drop a text file on, with a button for those who choose it instead. */
export function FileDrop({ label, accept, onText, children }: FileDropProps) {
  const over = useSignal(false);
  const said = useSignal("");
  const latest = useRef(0);
  const take = async (file: File | undefined) => {
    const turn = ++latest.current;
    said.value = "";
    if (file === undefined) return;
    if (file.size > largestFile.bytes) {
      said.value = `${file.name} is too large: ${largestFile.says}. Cut it to one station.`;
      return;
    }
    said.value = `Reading ${file.name} …`;
    const text = await file.text().catch(() => null);
    // Another file has been chosen while this one was read.
    if (turn !== latest.current) return;
    said.value = text === null ? `${file.name} could not be read: choose it again.` : "";
    if (text !== null) onText(file.name, text);
  };
  return (
    <div
      class={`file-drop${over.value ? " is-over" : ""}`}
      onDragOver={(event) => {
        event.preventDefault();
        over.value = true;
      }}
      onDragLeave={() => {
        over.value = false;
      }}
      onDrop={(event) => {
        event.preventDefault();
        over.value = false;
        void take(event.dataTransfer?.files[0]);
      }}
    >
      <div>{children}</div>
      <label class="file-button">
        {label}
        <input
          type="file"
          accept={accept}
          onChange={(event) => {
            const { currentTarget } = event;
            void take(currentTarget.files?.[0]).then(() => {
              currentTarget.value = ""; // the same file may be chosen again
            });
          }}
        />
      </label>
      <p role="status">{said.value}</p>
    </div>
  );
}
