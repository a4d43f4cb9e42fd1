import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { isPlaying } from "./playhead.ts";

/** For the ear, when the day has come to rest; not while it plays. */
export function Heard({ said }: { readonly said: string }) {
  const heard = useSignal("");
  const playing = isPlaying.value;
  useEffect(() => {
    if (playing) return undefined;
    const timer = setTimeout(() => {
      heard.value = said;
    }, 700);
    return () => clearTimeout(timer);
  }, [said, playing]);
  return (
    <p class="only-heard" aria-live="polite">
      {heard.value}
    </p>
  );
}
