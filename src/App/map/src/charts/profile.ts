// Temperature by depth: median with its spread, what was measured, the thermocline, and where oxygen runs out.
import { scaleLinear } from "d3-scale";
import { area, curveMonotoneY, line } from "d3-shape";
import { extent, ticks } from "d3-array";
import { freshId, hatch, n, show, text } from "./svg";

interface Band { p10: number; p50: number; p90: number; label: string; range: string }
export interface ProfileData {
  aria: string; tempUnit: string; maxDepth: number;
  depth: number[]; p10: number[]; p50: number[]; p90: number[];
  readings: { depth: number; temp: number }[];
  thermocline: Band | null; oxygen: Band | null;
}

export function drawProfile(host: HTMLElement, data: ProfileData): void {
  const w = Math.max(300, Math.round(host.clientWidth)), h = w < 380 ? 400 : 384, left = 38, right = w - 8, top = 30, bottom = h - 8;
  const all = [...data.p10, ...data.p90, ...data.readings.map((r) => r.temp)];
  const [low, high] = extent(all) as [number, number];
  const x = scaleLinear([Math.floor(low - 1), Math.ceil(high + 1)], [left, right]).nice(10);
  const y = scaleLinear([0, data.maxDepth], [top, bottom]);
  const hx = freshId(), ox = freshId(), fade = freshId(), mask = freshId();
  let out = `<defs>${hatch(hx)}<pattern id="${ox}" width="6" height="3.2" patternUnits="userSpaceOnUse"><path class="hx" d="M0 1.6H6"/></pattern>`
    + `<linearGradient id="${fade}" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#fff" stop-opacity="0"/><stop offset=".35" stop-color="#fff" stop-opacity=".9"/><stop offset="1" stop-color="#fff"/></linearGradient>`
    + `<mask id="${mask}" maskContentUnits="objectBoundingBox"><rect width="1" height="1" fill="url(#${fade})"/></mask></defs>`;
  const t = data.thermocline, o = data.oxygen;
  if (t) out += `<rect class="acw" x="${left}" y="${n(y(t.p10))}" width="${right - left}" height="${n(Math.max(1, y(t.p90) - y(t.p10)))}"/>`;
  if (o && y(o.p10) < bottom - 4) out += `<rect x="${left}" y="${n(y(o.p10))}" width="${right - left}" height="${n(bottom - y(o.p10))}" fill="url(#${ox})" mask="url(#${mask})" opacity=".5"/>`;
  for (const d of ticks(0, data.maxDepth, 7)) {
    if (d > 0) out += `<path class="gr" d="M${left} ${n(y(d))}H${right}"/>`;
    out += text(left - 8, y(d) + 4.5, String(d), 'class="q" text-anchor="end"');
  }
  const temps = x.ticks(6);
  temps.forEach((v, i) => {
    const last = i === temps.length - 1;
    out += `<path class="ax" d="M${n(x(v))} ${top}v-5"/>` + text(Math.min(x(v), right - (last ? 8 : 0)), top - 10, last ? `${v} ${data.tempUnit}` : String(v), 'class="q" text-anchor="middle"');
  });
  out += `<path class="ax" d="M${left} ${bottom}V${top}H${right}"/>`;
  const rows = data.depth.map((_, i) => i).filter((i) => data.depth[i]! <= data.maxDepth);
  const at = (values: number[]) => line<number>().x((i) => x(values[i]!)).y((i) => y(data.depth[i]!)).curve(curveMonotoneY)(rows) ?? "";
  const band = area<number>().x0((i) => x(data.p10[i]!)).x1((i) => x(data.p90[i]!)).y((i) => y(data.depth[i]!)).curve(curveMonotoneY)(rows) ?? "";
  out += `<path d="${band}" fill="url(#${hx})"/><path class="cv th" d="${at(data.p10)}"/><path class="cv th" d="${at(data.p90)}"/><path class="cv" d="${at(data.p50)}"/>`;
  if (t) {
    out += `<path class="ac" d="M${left} ${n(y(t.p50))}H${right}"/><path class="ac" style="stroke-width:4" d="M${left + 6} ${n(y(t.p10))}H${left}V${n(y(t.p90))}H${left + 6}"/>`
      + text(left + 18, y(t.p50) - 6, t.label, 'class="bg halo"') + text(left + 18, y(t.p50) + 17, t.range, 'class="halo"');
  }
  if (o) {
    const oy = Math.min(bottom - 46, Math.max(y(o.p50) + 18, (t ? y(t.p90) : 0) + 26)), width = 8 + 6.6 * Math.max(o.label.length, o.range.length);
    out += `<rect x="${n(right - width - 6)}" y="${n(oy)}" width="${n(width)}" height="42" style="fill:var(--paper)"/>`
      + text(right - width, oy + 17, o.label, 'class="it"') + text(right - width, oy + 34, o.range);
  }
  for (const r of data.readings) {
    if (r.depth > data.maxDepth) continue;
    out += `<path class="cv th" d="M${n(x(r.temp) - 9)} ${n(y(r.depth))}h18"/><circle class="pt" cx="${n(x(r.temp))}" cy="${n(y(r.depth))}" r="4.4"/>`;
  }
  show(host, w, h, data.aria, out);
}
