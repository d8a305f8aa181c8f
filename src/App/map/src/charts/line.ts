// The line under water, drawn to shape: surface, bottom, the belt, the line and where it may hang.
import { line } from "d3-shape";
import { freshId, hatch, n, show, text } from "./svg";

export interface LineData {
  aria: string; depth: number;
  /** From the jig to the rod tip: behind the boat (positive) and above the bottom. */
  shape: { x: number; z: number }[]; low: { x: number; z: number }[]; high: { x: number; z: number }[];
  belt: { from: number; to: number; label: string } | null;
  speedLabel: string; lineLabel: string; behindLabel: string;
}

export function drawLine(host: HTMLElement, data: LineData): void {
  const w = Math.max(300, Math.round(host.clientWidth)), h = w < 500 ? 226 : 286, top = 46, bottom = h - 42, left = 8, right = w - 8;
  const behind = Math.max(1, ...data.shape.map((p) => p.x), ...data.high.map((p) => p.x), ...data.low.map((p) => p.x));
  const boat = right - Math.min(150, w * 0.22), scale = Math.min((boat - left - 50) / behind, (bottom - top) / data.depth);
  const waterFoot = top + data.depth * scale, X = (x: number): number => boat - x * scale, Y = (z: number): number => waterFoot - z * scale;
  const path = (points: { x: number; z: number }[]): string => line<{ x: number; z: number }>().x((p) => X(p.x)).y((p) => Y(p.z))(points) ?? "";
  const hx = freshId(), gx = freshId();
  let out = `<defs>${hatch(hx)}<pattern id="${gx}" width="12" height="9" patternUnits="userSpaceOnUse"><path class="hx" d="M2 8L7 1"/></pattern></defs>`;
  out += `<rect x="${left}" y="${top}" width="${right - left}" height="${n(waterFoot - top)}" style="fill:var(--d1)"/>`;
  if (data.belt) {
    const by = top + Math.min(data.depth, data.belt.from) * scale, to = top + Math.min(data.depth, data.belt.to) * scale;
    if (to - by > 1) out += `<rect class="acw" x="${left}" y="${n(by)}" width="${right - left}" height="${n(to - by)}"/>` + text(right - 8, to - by > 24 ? by + 16 : by - 6, data.belt.label, 'text-anchor="end"');
  }
  out += `<rect x="${left}" y="${n(waterFoot)}" width="${right - left}" height="9" fill="url(#${gx})"/><path class="cv" d="M${left} ${n(waterFoot)}H${right}"/><path class="cv" d="M${left} ${top}H${right}"/>`;
  const band = [...data.low, ...[...data.high].reverse()];
  if (data.low.length > 1 && data.high.length > 1) out += `<path d="${path(band)}Z" fill="url(#${hx})"/>`;
  out += `<path class="cv" d="${path(data.shape)}"/>`;
  const jig = data.shape[0] ?? { x: behind, z: 0 }, jx = X(jig.x), jy = Y(jig.z) - 5;
  out += `<circle class="acf" cx="${n(jx)}" cy="${n(jy)}" r="6" style="stroke:var(--ink);stroke-width:1.6"/>`;
  out += `<path class="inkf" d="M${n(boat - 2)} ${top - 15}h52l-11 9h-37z"/><path class="cv" d="M${n(boat + 12)} ${top - 14}L${n(boat)} ${top}M${n(boat + 12)} ${top - 14}L${n(boat - 14)} ${top - 31}"/>`;
  out += text(boat - 20, top - 18, data.speedLabel, 'text-anchor="end"') + `<path class="ax" d="M${n(boat + 62)} ${top - 12}h24m-6 -4l6 4l-6 4"/>`;
  // The label stands in the water under the line, clear of it: right of where the line passes the height of its letters.
  const ly = Math.min(waterFoot - 22, top + (waterFoot - top) * 0.62), wide = data.lineLabel.length * 9;
  const passes = [...data.shape, ...data.low].filter((p) => Y(p.z) > ly - 22).map((p) => X(p.x));
  const lx = Math.min(Math.max(X(jig.x * 0.6), ...passes) + 14, right - 8 - wide);
  out += text(lx, ly, data.lineLabel, 'class="bg"');
  const dim = waterFoot + 24;
  out += `<path class="ax" d="M${n(jx)} ${n(dim - 5)}v10M${n(jx)} ${n(dim)}H${n(boat)}M${n(boat)} ${n(dim - 5)}v10"/>`;
  const tw = data.behindLabel.length * 7 + 12, mx = (jx + boat) / 2;
  out += `<rect x="${n(mx - tw / 2)}" y="${n(dim - 9)}" width="${n(tw)}" height="18" style="fill:var(--paper)"/>` + text(mx, dim + 4.5, data.behindLabel, 'text-anchor="middle"');
  show(host, w, Math.max(120, Math.round(waterFoot + 42)), data.aria, out);
}
