// Small helpers for charts drawn as SVG text. Numbers are rounded so that the text stays short.
export const n = (value: number): string => (Math.round(value * 100) / 100).toString();

export const text = (x: number, y: number, words: string, more = ""): string =>
  `<text x="${n(x)}" y="${n(y)}" ${more}>${escape(words)}</text>`;

export const escape = (words: string): string =>
  words.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]!);

let ids = 0;
export const freshId = (): string => `p${++ids}`;

/** A 45 degree hatch that survives a phone and a photocopy: 5 px at .8 px. */
export const hatch = (id: string, cls = "hx"): string =>
  `<pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="${cls}" d="M0 0V5"/></pattern>`;

export function show(host: Element, width: number, height: number, aria: string, body: string): void {
  host.innerHTML = `<svg class="chart" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escape(aria)}">${body}</svg>`;
}
