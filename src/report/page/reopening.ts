import { leftOutOf } from "./embedded.ts";
import { escaped } from "./markup.ts";
import type { Section } from "./reportInput.ts";

/** That the file itself is enough to go on with, and what is missing where it is not. */
export const reopening: Section = ({ kept }) => {
  const leftOut = leftOutOf(kept);
  const files = Object.keys(kept.attachments).filter((name) => !leftOut.includes(name));
  const held = files.length === 0 ? "the scenario" : `the scenario and ${files.join(", ")}`;
  const missing =
    leftOut.length === 0 ? "" : ` Too large to be held, so keep beside it: ${leftOut.join(", ")}.`;
  return {
    heading: "Going on",
    body: `<p>${escaped(`The file of this report holds ${held}: open it under “Keep & share” on the page to change anything and ask again.${missing}`)}</p>`,
  };
};
