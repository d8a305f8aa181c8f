// The thermocline at a place hour by hour: where it probably lies as a hatched band, its middle as a line, the bottom under it.
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import { freshId, hatch, n, show, text } from "./svg";

export interface HoursData {
  aria: string; bottom: number; bottomLabel: string; atRest: number; atRestLabel: string;
  hours: { label: string; p10: number; p50: number; p90: number; chosen: boolean }[];
}

export function drawHours(host: HTMLElement, data: HoursData): void {
  const w = Math.max(280, Math.round(host.clientWidth)), h = 190, left = 32, right = w - 6, top = 12, foot = h - 26;
  const depths = data.hours.flatMap((hour) => [hour.p10, hour.p90]), least = Math.min(data.atRest, ...depths), most = Math.max(data.atRest, ...depths);
  // The bottom is drawn where it is near; far below, it would press the hours to a flat line.
  const seen = data.bottom < most + 1.5 * (most - least) + 6, low = Math.max(0, least - 0.25 * (most - least) - 2), high = seen ? data.bottom + 2 : most + 0.25 * (most - least) + 2;
  const x = scaleLinear([0, Math.max(1, data.hours.length - 1)], [left, right]), y = scaleLinear([low, high], [top, foot]);
  const hx = freshId(), gx = freshId(), clip = freshId();
  let out = `<defs>${hatch(hx)}<pattern id="${gx}" width="12" height="9" patternUnits="userSpaceOnUse"><path class="hx" d="M2 8L7 1"/></pattern>`
    + `<clipPath id="${clip}"><rect x="${left}" y="${top}" width="${right - left}" height="${foot - top}"/></clipPath></defs>`;
  for (const v of y.ticks(4)) out += `<path class="gr" d="M${left} ${n(y(v))}H${right}"/>` + text(left - 6, y(v) + 4.5, String(v), 'class="q" text-anchor="end"');
  const at = data.hours.findIndex((hour) => hour.chosen), points = data.hours.map((hour, i) => ({ ...hour, x: x(i) }));
  const band = area<(typeof points)[number]>().x((p) => p.x).y0((p) => y(p.p10)).y1((p) => y(p.p90))(points) ?? "";
  const middle = line<(typeof points)[number]>().x((p) => p.x).y((p) => y(p.p50))(points) ?? "";
  out += `<g clip-path="url(#${clip})"><path d="${band}" fill="url(#${hx})"/><path class="ac" d="${middle}"/>`;
  out += `<path class="ax" style="stroke-dasharray:2 5" d="M${left} ${n(y(data.atRest))}H${right}"/></g>`;
  if (seen) {
    const by = y(data.bottom);
    out += `<rect x="${left}" y="${n(by)}" width="${right - left}" height="${n(Math.min(9, foot - by))}" fill="url(#${gx})"/><path class="cv" d="M${left} ${n(by)}H${right}"/>`;
    out += text(right - 4, by - 6, data.bottomLabel, 'class="bg" text-anchor="end"');
  }
  if (at >= 0) {
    const hour = points[at]!;
    out += `<path class="ax" style="stroke-width:2" d="M${n(hour.x)} ${top}V${foot}"/><circle class="acf" cx="${n(hour.x)}" cy="${n(y(hour.p50))}" r="5.5" style="stroke:var(--ink);stroke-width:1.6"/>`;
  }
  // Its name stands on the side of the line where the water is, away from the chosen hour.
  const rest = y(data.atRest), above = points.reduce((sum, p) => sum + p.p50, 0) / Math.max(1, points.length) > data.atRest;
  const near = at >= 0 && at < points.length / 2;
  out += text(near ? right - 4 : left + 6, above ? rest - 6 : rest + 16, data.atRestLabel, `class="bg" text-anchor="${near ? "end" : "start"}"`);
  let next = 0;
  for (const point of points) {
    const wide = point.label.length * 7 + 8;
    if (point.label === "" || point.x - wide / 2 < next || point.x + wide / 2 > w) continue;
    out += text(point.x, foot + 18, point.label, 'class="q" text-anchor="middle"');
    next = point.x + wide / 2;
  }
  out += `<path class="ax" d="M${left} ${foot}H${right}"/>`;
  show(host, w, h, data.aria, out);
}
