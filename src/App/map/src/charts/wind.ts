// Wind by hour: bar is wind, stem is gust, the arrow flies with the wind, dark hours are hatched.
import { scaleLinear } from "d3-scale";
import { max } from "d3-array";
import { freshId, hatch, n, show, text } from "./svg";

export interface WindData {
  aria: string;
  hours: { label: string; wind: number; gust: number | null; fromDeg: number | null; dark: boolean; chosen: boolean }[];
  /** Times on stops, in hours from the first. */
  stops: { from: number; to: number }[];
  /** Old weather is drawn hatched, not filled. */
  stale: boolean;
}

export function drawWind(host: HTMLElement, data: WindData): void {
  const w = Math.max(300, Math.round(host.clientWidth)), h = w < 500 ? 170 : 150, left = 32, right = w - 6, top = 34, foot = h - 26;
  const most = Math.max(5, max(data.hours, (b) => Math.max(b.wind, b.gust ?? 0)) ?? 5);
  const y = scaleLinear([0, most * 1.08], [foot, top]), step = (right - left) / data.hours.length, bar = Math.min(26, step * 0.55);
  const hx = freshId(), bx = freshId();
  let out = `<defs>${hatch(hx)}${hatch(bx)}</defs>`;
  for (const v of y.ticks(3)) if (v > 0) out += `<path class="gr" d="M${left} ${n(y(v))}H${right}"/>` + text(left - 6, y(v) + 4.5, String(v), 'class="q" text-anchor="end"');
  let nextLabel = 0;
  const every = Math.max(1, Math.ceil(18 / step));
  data.hours.forEach((hour, i) => {
    const cx = left + (i + 0.5) * step;
    if (hour.dark) out += `<rect x="${n(cx - step / 2)}" y="10" width="${n(step)}" height="${n(foot - 10)}" fill="url(#${hx})" opacity=".28"/>`;
    if (hour.chosen) out += `<rect class="acw" x="${n(cx - step / 2)}" y="10" width="${n(step)}" height="${n(foot - 10)}"/>`;
    if (hour.fromDeg !== null && i % every === 0) out += `<g transform="translate(${n(cx)} 20) rotate(${n(hour.fromDeg + 180)})"><path class="ax" style="stroke-width:1.6" d="M0 7V-7M-3.5 -3L0 -7L3.5 -3"/></g>`;
    if (hour.gust !== null && hour.gust > hour.wind) out += `<path class="ax" d="M${n(cx)} ${n(y(hour.wind))}V${n(y(hour.gust))}m-4 0h8"/>`;
    out += `<rect ${data.stale ? `fill="url(#${bx})" class="ax"` : 'class="inkf"'} x="${n(cx - bar / 2)}" y="${n(y(hour.wind))}" width="${n(bar)}" height="${n(foot - y(hour.wind))}"/>`;
    // An hour's name stands where the hour begins: where a stop at that time begins, too.
    const wide = hour.label.length * 7 + 8, at = left + i * step;
    if (at - wide / 2 >= nextLabel) { out += text(at, foot + 18, hour.label, 'class="q" text-anchor="middle"'); nextLabel = at + wide / 2; }
  });
  out += `<path class="ax" d="M${left} ${foot}H${right}"/>`;
  for (const s of data.stops) out += `<path d="M${n(left + s.from * step)} ${foot}H${n(left + s.to * step)}" style="stroke:var(--belt);stroke-width:5"/>`;
  show(host, w, h, data.aria, out);
}
