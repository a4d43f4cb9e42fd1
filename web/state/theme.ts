import { computed, effect, signal } from "@preact/signals";
import { theme } from "./view.ts";

const prefersDark = matchMedia("(prefers-color-scheme: dark)");
const systemIsDark = signal(prefersDark.matches);
prefersDark.addEventListener("change", ({ matches }) => {
  systemIsDark.value = matches;
});

/** While the page goes to paper. */
export const isPrinting = signal(false);
const paper = matchMedia("print");
paper.addEventListener("change", ({ matches }) => {
  isPrinting.value = matches;
});
addEventListener("beforeprint", () => {
  isPrinting.value = true;
});
addEventListener("afterprint", () => {
  isPrinting.value = false;
});

/** What is on show; pictures draw in it. On paper everything is light. */
export const isDark = computed(
  () => !isPrinting.value && (theme.value === "dark" || (theme.value === "auto" && systemIsDark.value)),
);

/** Pictures and motion keep still for those who ask their system for it. */
export const wantsStill = signal(matchMedia("(prefers-reduced-motion: reduce)").matches);
matchMedia("(prefers-reduced-motion: reduce)").addEventListener("change", ({ matches }) => {
  wantsStill.value = matches;
});

export function followTheme(): void {
  effect(() => {
    document.documentElement.dataset["theme"] = isDark.value ? "dark" : "light";
  });
}
