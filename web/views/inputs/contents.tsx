import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { addressOf } from "../../state/view.ts";
import { problems } from "../../worker/client.ts";
import { goToSection, sectionElement, sectionOf, sections, type SectionId } from "./sections.ts";

/** The list of contents; stays in sight and shows where one is. */
export function Contents() {
  const here = useSignal<SectionId>("scenario");
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const look = () => {
      const passed = sections.filter(
        ({ id }) => (sectionElement(id)?.getBoundingClientRect().top ?? Infinity) < 160,
      );
      here.value = passed.at(-1)?.id ?? "scenario";
    };
    addEventListener("scroll", look, { passive: true });
    return () => removeEventListener("scroll", look);
  }, []);
  useEffect(() => {
    // On a narrow screen the list runs sideways: it follows.
    const current = list.current?.querySelector<HTMLElement>("[aria-current]");
    if (current) list.current?.scrollTo({ left: current.offsetLeft - 24 });
  }, [here.value]);
  const wrongIn = new Map<SectionId, number>();
  for (const problem of problems.value) {
    const id = sectionOf(problem);
    wrongIn.set(id, (wrongIn.get(id) ?? 0) + 1);
  }
  return (
    <nav class="contents" aria-label="Inputs">
      <ol ref={list}>
        {sections.map(({ id, title }) => {
          const wrong = wrongIn.get(id) ?? 0;
          return (
            <li key={id}>
              <a
                href={addressOf("inputs")}
                aria-current={here.value === id ? "true" : undefined}
                onClick={(event) => {
                  event.preventDefault();
                  goToSection(id);
                }}
              >
                {title}
                {wrong > 0 && (
                  <span class="contents-wrong">
                    {wrong}
                    <span class="only-heard"> to mend</span>
                  </span>
                )}
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
