import { signal } from "@preact/signals";

type View = () => preact.JSX.Element;

export interface LateView {
  readonly View: View;
  /** Fetches its code, if it is not there. */
  readonly fetch: () => void;
}

/** A view whose code comes when it is first looked at, so that the first one need not wait for all. */
export function lateView(load: () => Promise<View>): LateView {
  const come = signal<View | null>(null);
  const failed = signal(false);
  let asked = false;
  const fetch = () => {
    if (asked) return;
    asked = true;
    load().then(
      (view) => (come.value = view),
      () => {
        failed.value = true;
        asked = false;
      },
    );
  };
  return {
    fetch,
    View() {
      fetch();
      const Now = come.value;
      if (Now !== null) return <Now />;
      return (
        <p class="waiting" role="status">
          {failed.value ? "This part of the page could not be loaded: load the page again." : "Opening …"}
        </p>
      );
    },
  };
}
