import { Fragment, type ComponentChildren } from "preact";
import { useNarrowScreen } from "../narrowScreen.ts";

interface Parts {
  readonly shown: ComponentChildren;
  readonly entry: ComponentChildren;
}

/** What is entered, and what it shows: beside the pit, on a phone, one enters first. */
export function EntryFirst({ shown, entry }: Parts) {
  const parts = [<Fragment key="shown">{shown}</Fragment>, <Fragment key="entry">{entry}</Fragment>];
  return <>{useNarrowScreen() ? parts.toReversed() : parts}</>;
}
