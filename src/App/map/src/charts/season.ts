// The season: isotherms by depth and date, the thermocline through them, and on the same days when it turns over.
import { contours } from "d3-contour";
import { scaleLinear } from "d3-scale";
import { area, curveBasis, line } from "d3-shape";
import { max, ticks } from "d3-array";
import { n, show, text } from "./svg";

export interface SeasonData {
  aria: string; today: number; todayLabel: string; forecastLabel: string; warmLabel: string; turnoverLabel: string;
  days: number; depth: number[]; maxDepth: number;
  /** Median temperatures, day by day, [days * depth.length]. */
  temps: number[]; low: number; high: number;
  thermocline: ({ p10: number; p50: number; p90: number } | null)[];
  months: { day: number; label: string }[];
  /** Share of members that turn over on a day. */
  turnover: { day: number; share: number }[]; turnoverFrom: number; turnoverTo: number; turnoverMain: string; turnoverRange: string;
}

const rows = 48;

export function drawSeason(host: HTMLElement, data: SeasonData): void {
  const w = Math.max(320, Math.round(host.clientWidth)), narrow = w < 600;
  const left = 38, right = w - 8, top = 22, bottom = narrow ? 222 : 168, foot = bottom + (narrow ? 62 : 68), h = foot + 26;
  const x = scaleLinear([0, data.days - 1], [left, right]), y = scaleLinear([0, data.maxDepth], [top, bottom]);
  let out = `<rect x="${left}" y="${top}" width="${right - left}" height="${bottom - top}" class="t0"/>`;
  out += isotherms(data, x, y);
  for (const d of ticks(0, data.maxDepth, 4)) out += text(left - 7, Math.min(bottom, y(d) + 9), String(d), 'class="q" text-anchor="end"');
  out += thermocline(data, x, y);
  const tx = x(data.today), roomLeft = tx - left > 60, roomRight = right - tx > 80;
  out += `<path class="ax" style="stroke-width:2" d="M${n(tx)} ${top}V${bottom}"/>`;
  if (roomLeft) out += text(tx - 6, 15, data.todayLabel, 'text-anchor="end" style="font-weight:650"');
  if (roomRight) out += text(tx + 6, 15, data.forecastLabel, 'class="q"');
  out += turnover(data, x, foot, left);
  out += `<path class="ax" d="M${left} ${foot}H${right}"/>`;
  let lastX = -99;
  for (const m of data.months) {
    if (x(m.day) - lastX < 34 || right - x(m.day) < 24) continue;
    lastX = x(m.day);
    out += `<path class="ax" d="M${n(lastX)} ${foot}v5"/>` + text(lastX + 3, foot + 18, m.label, 'class="q"');
  }
  show(host, w, h, data.aria, out);
}

function isotherms(data: SeasonData, x: (v: number) => number, y: (v: number) => number): string {
  const k = data.depth.length, grid = new Array<number>(data.days * rows);
  for (let day = 0; day < data.days; day++) {
    for (let row = 0, i = 0; row < rows; row++) {
      const d = (data.maxDepth * row) / (rows - 1);
      while (i + 2 < k && data.depth[i + 1]! < d) i++;
      const d0 = data.depth[i]!, d1 = data.depth[i + 1] ?? d0, t = d1 > d0 ? Math.min(1, Math.max(0, (d - d0) / (d1 - d0))) : 0;
      const a = data.temps[day * k + i] ?? data.low, b = data.temps[day * k + Math.min(k - 1, i + 1)] ?? a;
      grid[row * data.days + day] = a + (b - a) * t;
    }
  }
  let out = "";
  const tracer = contours().size([data.days, rows]).smooth(true);
  for (let step = 1; step < 10; step++) {
    const level = data.low + ((data.high - data.low) * step) / 10;
    let d = "";
    for (const polygon of tracer.contour(grid, level).coordinates) {
      for (const ring of polygon) {
        const points = ring.map((p) => {
          const day = Math.min(data.days - 1, Math.max(0, p[0]! - 0.5)), row = Math.min(rows - 1, Math.max(0, p[1]! - 0.5));
          return `${n(x(day))} ${n(y((row * data.maxDepth) / (rows - 1)))}`;
        });
        d += `M${points.join("L")}Z`;
      }
    }
    if (d) out += `<path class="t${step}" d="${d}"/>`;
  }
  return out;
}

function thermocline(data: SeasonData, x: (v: number) => number, y: (v: number) => number): string {
  const clip = (v: number): number => y(Math.min(data.maxDepth, v));
  const days = data.thermocline.map((t, day) => ({ t, day }));
  const past = days.filter((d) => d.day <= data.today), ahead = days.filter((d) => d.day >= data.today);
  const course = line<(typeof days)[number]>().defined((d) => d.t !== null).x((d) => x(d.day)).y((d) => clip(d.t!.p50)).curve(curveBasis)(past);
  const wedge = area<(typeof days)[number]>().defined((d) => d.t !== null).x((d) => x(d.day)).y0((d) => clip(d.t!.p10)).y1((d) => clip(d.t!.p90)).curve(curveBasis)(ahead);
  const middle = line<(typeof days)[number]>().defined((d) => d.t !== null).x((d) => x(d.day)).y((d) => clip(d.t!.p50)).curve(curveBasis)(ahead);
  return (wedge ? `<path class="acf" opacity=".4" d="${wedge}"/>` : "") + (middle ? `<path class="ac" style="stroke-width:1.4" d="${middle}"/>` : "") + (course ? `<path class="ac" d="${course}"/>` : "");
}

function turnover(data: SeasonData, x: (v: number) => number, foot: number, left: number): string {
  if (data.turnover.length === 0) return text(left, foot - 12, data.turnoverLabel, 'class="q"');
  const most = max(data.turnover, (b) => b.share) ?? 1;
  const width = Math.max(1, x(1) - x(0) - 0.8);
  let out = "";
  for (const bar of data.turnover) {
    const height = (bar.share / most) * 52, inside = bar.day >= data.turnoverFrom && bar.day <= data.turnoverTo;
    out += `<rect class="${inside ? "acf" : "inkf"}"${inside ? "" : ' opacity=".35"'} x="${n(x(bar.day) - width / 2)}" y="${n(foot - height)}" width="${n(width)}" height="${n(height)}"/>`;
  }
  const first = Math.min(...data.turnover.map((b) => b.day)), lx = x(first) - 10, wide = lx - left > 240;
  if (wide) out += text(left, foot - 9, data.turnoverLabel, 'class="q"');
  if (lx - left > 90) out += text(lx, foot - 26, data.turnoverMain, 'class="bg" text-anchor="end"') + text(lx, foot - 9, data.turnoverRange, 'text-anchor="end"');
  return out;
}
