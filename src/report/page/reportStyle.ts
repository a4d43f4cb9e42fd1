/** How the report looks: a page of a field book, light, for paper first. All rules stand under `.field-report`. */

export const ink = "#2b2622";
export const pencil = "#5d554c";
export const rule = "#cfc3ab";
export const slow = "#7a2415";

/** By case, in order; letters tell the cases apart where colours cannot. */
const caseColours = ["#a8480b", "#125e8f", "#6a4a8c", "#4d6a1f", "#8f1f4e"];
const caseDashes = ["none", "7 3", "2 3", "7 3 2 3", "12 4"];

export function caseColour(c: number): string {
  return caseColours[c % caseColours.length]!;
}

export function caseDash(c: number): string {
  return caseDashes[c % caseDashes.length]!;
}

/** The short name of a case in pictures and tables: A, B, …, Z, 27, 28. */
export function caseLetter(c: number): string {
  return c < 26 ? String.fromCharCode(65 + c) : String(c + 1);
}

/** Earth on paper: pale sand to darker clay. */
export function earthColour(sandFraction: number, clayFraction: number): string {
  const hue = 30 + 14 * sandFraction - 14 * clayFraction;
  return `hsl(${hue.toFixed(0)} ${(30 + 12 * sandFraction).toFixed(0)}% ${(87 - 34 * clayFraction).toFixed(0)}%)`;
}

export const drawingFont = 'ui-sans-serif,system-ui,"Segoe UI","Noto Sans",sans-serif';
const titleFont =
  '"Iowan Old Style","Palatino Linotype",Palatino,"Book Antiqua","URW Palladio L",Georgia,serif';

export const reportStyle = `
.field-report{box-sizing:border-box;max-width:52rem;margin:0 auto;padding:1.25rem clamp(.75rem,4vw,2rem) 2rem;color:${ink};background:#fffdf7;font:15px/1.45 ${drawingFont};overflow-wrap:anywhere}
.field-report h1{margin:0;font:600 1.75em/1.15 ${titleFont}}
.field-report h2{margin:1.5em 0 .3em;padding-bottom:.1em;border-bottom:1px solid ${rule};font:600 1.15em/1.2 ${titleFont};color:#6f4426}
.field-report p{margin:.35em 0}
.field-report ul{margin:.35em 0;padding-left:1.5em}
.field-report li{margin:.15em 0}
.field-report figure{margin:0}
.field-report figcaption{color:${pencil};font-size:.86em;line-height:1.3}
.field-report svg{display:block;width:100%;height:auto}
.field-report .many{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:.6rem 1.4rem;align-items:start}
.field-report .many>.scrolls,.field-report .many>.told{grid-column:1/-1}
.field-report .head{border-bottom:3px double #6f4426;padding-bottom:.5em}
.field-report .where{color:${pencil}}
.field-report .invented{display:inline-block;padding:0 .45em;border:1px solid ${slow};color:${slow};font-size:.8em;letter-spacing:.04em}
.field-report .asked{margin:.6em 0 0;font:italic 1.2em/1.3 ${titleFont}}
.field-report .said{font:600 1.12em/1.35 ${titleFont}}
.field-report .pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:.6rem 1.4rem;align-items:start}
.field-report .letter{font-weight:700}
.field-report .pair>.scrolls{grid-column:1/-1}
.field-report .words{white-space:normal}
.field-report .loose{grid-template-columns:1fr}
.field-report .loose figure{max-width:27rem}
.field-report .scrolls{overflow-x:auto;margin:.5em 0}
.field-report .scrolls:focus-visible{outline:3px solid #125e8f}
.field-report table{border-collapse:collapse;font-size:.88em;font-variant-numeric:tabular-nums;width:100%}
.field-report caption{text-align:start;font-weight:600;padding-bottom:.2em}
.field-report th,.field-report td{padding:.15em .7em .15em 0;text-align:end;vertical-align:top;border-bottom:1px solid ${rule};font-weight:400}
.field-report td{white-space:nowrap;overflow-wrap:normal}
.field-report th:first-child{min-width:7.5rem;text-align:start;overflow-wrap:anywhere}
.field-report thead th{overflow-wrap:normal;color:${pencil};border-bottom-color:${pencil};vertical-align:bottom}
.field-report .fine{font-size:.9em}
.field-report summary{cursor:pointer;font-weight:600}
.field-report .on-paper{display:none}
@media screen{
.field-report{container-type:inline-size}
@container (max-width:43rem){
.field-report thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.field-report table,.field-report caption,.field-report tbody{display:block}
.field-report tr{display:grid;grid-template-columns:repeat(auto-fill,minmax(5.2rem,1fr));gap:0 .6rem;padding:.2em 0;border-bottom:1px solid ${rule}}
.field-report tbody th{grid-column:1/-1;border:0}
.field-report td{border:0;padding:.1em 0;text-align:start;white-space:normal}
.field-report td::before{content:attr(data-head);display:block;color:${pencil};font-size:.86em;line-height:1.2}
}
}
@media print{
.field-report .loose figure{max-width:none}
.field-report h1{font-size:1.5em}
.field-report figcaption{font-size:.82em;line-height:1.2}
.field-report th,.field-report td{padding:.04em .6em .04em 0}
.field-report .scrolls{margin:.25em 0}
.field-report .asked{margin:.3em 0 0;font-size:1.1em}
.field-report .many{grid-template-columns:1fr 1fr;gap:.1rem 1.4rem}
.field-report .beside{display:grid;grid-template-columns:1fr 1fr;gap:0 1.4rem}
.field-report .beside>:only-child{grid-column:1/-1}
.field-report .beside th:first-child{min-width:0}
.field-report .pair .many{display:block}
.field-report{max-width:none;padding:0;background:none;font-size:8pt;line-height:1.25}
.field-report h2{margin:.35em 0 .1em;break-after:avoid}
.field-report p{margin:.15em 0}
.field-report .pair{grid-template-columns:1fr 1fr;gap:.2rem 1.4rem}
.field-report .check{columns:3;column-gap:1.1rem;font-size:6.9pt;line-height:1.17}
.field-report .check ul{padding-left:1.2em}
.field-report .check li{margin:.04em 0}
.field-report .fine{font-size:6.9pt;line-height:1.17}
.field-report .fine ul{margin-top:0}
.field-report .fine li{orphans:2;widows:2}
.field-report .flows{display:block;columns:2;column-gap:1.4rem}
.field-report .flows>*{break-inside:avoid;margin:0 0 .3rem}
.field-report .loose>*{break-inside:auto}
.field-report .loose h2:first-child{margin-top:.2em}
.field-report .told{font-size:6.9pt;line-height:1.17}
.field-report .told ul{padding-left:1.2em}
.field-report .loose th:first-child{min-width:0}
.field-report .told ul{margin-top:0}
.field-report figure,.field-report table,.field-report .said{break-inside:avoid}
.field-report .scrolls{overflow:visible}
.field-report details,.field-report .on-screen{display:none}
.field-report .on-paper{display:block}
}
`.trim();

/** Room around the print; both Letter and A4. */
export const paperStyle = "@page{margin:9mm 10mm}";
