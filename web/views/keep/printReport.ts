/**
 * Prints a report in place of the page: it stands in a shade of its own, apart from the page's styles, where print.css lets
 * nothing else onto the paper. When the paper is out, the page is as before.
 */
export function printReport(html: string): void {
  const read = new DOMParser().parseFromString(html, "text/html");
  const report = read.querySelector("main.field-report");
  const styles = [...read.querySelectorAll("style")].map((style) => style.textContent ?? "");
  if (report === null) throw new Error("the report has no body");
  restore();
  const place = document.createElement("div");
  place.className = "report-print";
  const shade = place.attachShadow({ mode: "open" });
  const style = document.createElement("style");
  style.textContent = styles.at(-1) ?? "";
  shade.append(style, document.importNode(report, true));
  // Rules for the paper itself count in the document only.
  const paper = document.createElement("style");
  paper.className = "report-paper";
  paper.textContent = styles[0]?.match(/@page\s*\{[^}]*\}/)?.[0] ?? "";
  document.head.append(paper);
  document.body.append(place);
  document.documentElement.dataset["prints"] = "report";
  addEventListener("afterprint", restore, { once: true });
  print();
}

function restore(): void {
  document.querySelectorAll(".report-print, .report-paper").forEach((one) => one.remove());
  delete document.documentElement.dataset["prints"];
}
