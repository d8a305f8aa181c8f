import { onSizeNow } from "../device/size";
import { drawHours, type HoursData } from "./hours";
import { drawLine, type LineData } from "./line";
import { drawProfile, type ProfileData } from "./profile";
import { drawSeason, type SeasonData } from "./season";
import { drawWind, type WindData } from "./wind";

const drawn = new WeakMap<Element, { kind: string; json: string; watch: ResizeObserver; width: number }>();

onSizeNow(() => {
  for (const host of document.querySelectorAll<HTMLElement>(".chartbox > div")) {
    const known = drawn.get(host);
    if (!known || Math.abs(host.clientWidth - known.width) < 2) continue;
    known.width = host.clientWidth;
    paint(host, known.kind, known.json);
  }
});

/** Draws a chart into an element, and again when the element's width changes. */
export function draw(host: HTMLElement, kind: string, json: string): void {
  const known = drawn.get(host);
  known?.watch.disconnect();
  paint(host, kind, json);
  const entry = { kind, json, width: host.clientWidth, watch: new ResizeObserver(() => {
    if (Math.abs(host.clientWidth - entry.width) < 2) return;
    entry.width = host.clientWidth;
    paint(host, kind, json);
  }) };
  entry.watch.observe(host);
  drawn.set(host, entry);
}

function paint(host: HTMLElement, kind: string, json: string): void {
  if (host.clientWidth === 0) return;
  const data: unknown = JSON.parse(json);
  switch (kind) {
    case "profile": drawProfile(host, data as ProfileData); break;
    case "season": drawSeason(host, data as SeasonData); break;
    case "wind": drawWind(host, data as WindData); break;
    case "hours": drawHours(host, data as HoursData); break;
    case "line": drawLine(host, data as LineData); break;
    default: throw new Error(`No chart is called '${kind}'.`);
  }
}
