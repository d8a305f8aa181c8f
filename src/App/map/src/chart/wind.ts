// The water as the wind moves it: depth of the thermocline as ink tone, the belt where it meets the bottom, strokes along the wind.
import type { Frame } from "./field";
import type { LakeModel } from "./model";
import { rgb, type Palette } from "./palette";
import type { Window } from "./ink";
import type { SpotMark, WindDrawing } from "../worker/desk";

export interface WindModel {
  frame: Frame;
  hours: number;
  cells: Int32Array;
  /** For every cell of the grid the water cell that speaks for it, so that the field runs on under the shore. */
  nearest: Int32Array;
  offset: Float32Array;
  wave: Float32Array;
  east: Float32Array;
  north: Float32Array;
  belt: readonly number[] | null;
  /** Shallowest and deepest thermocline of all hours, m: the ends of the tone scale. */
  lowM: number;
  highM: number;
  places: readonly SpotMark[];
  fromDeg: readonly number[];
  windMps: readonly number[];
}

const floats = (bytes: Uint8Array): Float32Array => new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);

export function readWind(c: WindDrawing, arrays: Record<string, Uint8Array>): WindModel | null {
  const cells = arrays["wind.cells"], offset = arrays["wind.offset"], wave = arrays["wind.wave"];
  const east = arrays["wind.east"], north = arrays["wind.north"];
  if (!cells || !offset || !wave || !east || !north) return null;
  const frame: Frame = c.frame;
  const of = new Int32Array(cells.buffer, cells.byteOffset, cells.byteLength >> 2), moved = floats(offset);
  let least = 0, most = 0;
  for (const value of moved) { if (value < least) least = value; if (value > most) most = value; }
  const rest = c.belt?.[3] ?? 0;
  return {
    frame, hours: c.hours, cells: of, nearest: spread(of, frame), offset: moved, wave: floats(wave), east: floats(east), north: floats(north),
    belt: c.belt, lowM: Math.max(0, rest + Math.min(least, -1)), highM: rest + Math.max(most, 1), places: c.places, fromDeg: c.fromDeg, windMps: c.windMps,
  };
}

// Breadth-first from the water outward.
function spread(cells: Int32Array, f: Frame): Int32Array {
  const nearest = new Int32Array(f.nx * f.ny).fill(-1);
  let ring: number[] = [];
  cells.forEach((cell, w) => { nearest[cell] = w; ring.push(cell); });
  while (ring.length > 0) {
    const next: number[] = [];
    for (const cell of ring) {
      const x = cell % f.nx, w = nearest[cell]!;
      for (const other of [x > 0 ? cell - 1 : -1, x + 1 < f.nx ? cell + 1 : -1, cell - f.nx, cell + f.nx]) {
        if (other < 0 || other >= nearest.length || nearest[other]! >= 0) continue;
        nearest[other] = w;
        next.push(other);
      }
    }
    ring = next;
  }
  return nearest;
}

/** One field at a moment between two hours, on the whole grid. */
export function atHour(wind: WindModel, field: Float32Array, hour: number, out: Float32Array): Float32Array {
  const n = wind.cells.length, low = Math.max(0, Math.min(wind.hours - 1, Math.floor(hour))), high = Math.min(wind.hours - 1, low + 1), t = hour - low;
  const a = low * n, b = high * n;
  for (let i = 0; i < out.length; i++) {
    const w = wind.nearest[i]!;
    if (w >= 0) out[i] = field[a + w]! * (1 - t) + field[b + w]! * t;
  }
  return out;
}

/** A value at a place, from the nearest four cells. */
function sample(grid: Float32Array, f: Frame, xM: number, yM: number): number {
  const c = Math.min(f.nx - 1.001, Math.max(0, (xM - f.westM) / f.cellM - 0.5)), r = Math.min(f.ny - 1.001, Math.max(0, (yM - f.southM) / f.cellM - 0.5));
  const x0 = c | 0, y0 = r | 0, tx = c - x0, ty = r - y0, i = y0 * f.nx + x0;
  return (grid[i]! * (1 - tx) + grid[i + 1]! * tx) * (1 - ty) + (grid[i + f.nx]! * (1 - tx) + grid[i + f.nx + 1]! * tx) * ty;
}

const tones = 32;
// The belt's chance in steps of 10 cm about rest, as in the still chart: three nested fills.
const beltSteps = 10;

interface Tables { colours: Uint32Array; levels: Uint8Array }

function tablesOf(wind: WindModel, palette: Palette, maxDepthM: number): Tables {
  const washes = palette.washes.map(rgb), accent = rgb(palette.accent), shares = [0, 0.3, 0.55, 0.9];
  const colours = new Uint32Array(tones * shares.length);
  for (let tone = 0; tone < tones; tone++) {
    const at = 0.5 + (tone / (tones - 1)) * (washes.length - 3), k = Math.floor(at), t = at - k;
    for (const [s, share] of shares.entries()) {
      const [r, g, b] = [0, 1, 2].map((i) => {
        const wash = washes[k]![i]! * (1 - t) + washes[k + 1]![i]! * t;
        return Math.round(wash + (accent[i]! - wash) * share);
      }) as [number, number, number];
      colours[tone * shares.length + s] = (255 << 24) | (b << 16) | (g << 8) | r;
    }
  }
  const levels = new Uint8Array(Math.ceil((maxDepthM + 60) * beltSteps));
  const belt = wind.belt;
  if (belt) {
    for (let i = 0; i < levels.length; i++) {
      const d = (i + 0.5) / beltSteps;
      levels[i] = d >= belt[2]! && d < belt[4]! ? 3 : d >= belt[1]! && d < belt[5]! ? 2 : d >= belt[0]! && d < belt[6]! ? 1 : 0;
    }
  }
  return { colours, levels };
}

/** Paints tone, belt and second shore of the model's hour. */
export class WindPaint {
  private tables: Tables | undefined;
  private key = "";
  private of: WindModel | undefined;
  private now = new Float32Array();

  paint(image: ImageData, model: LakeModel, wind: WindModel, palette: Palette, westM: number, northM: number, pixelM: number): void {
    const f = model.frame!, g = wind.frame, field = model.field;
    if (this.of !== wind || this.key !== palette.theme || !this.tables) {
      this.tables = tablesOf(wind, palette, model.maxDepthM);
      [this.of, this.key] = [wind, palette.theme];
      this.now = new Float32Array(g.nx * g.ny);
    }
    const moved = atHour(wind, wind.offset, model.windHour, this.now), { colours, levels } = this.tables;
    const rest = wind.belt?.[3] ?? 0, perM = (tones - 1) / Math.max(0.5, wind.highM - wind.lowM);
    const out = new Uint32Array(image.data.buffer), { width, height } = image;
    // The second shore runs where the bottom changes from above the layer to below it: between a pixel and its neighbour to the left or above.
    const [lr, lg, lb] = rgb(palette.belt) as [number, number, number], line = (255 << 24) | (lb << 16) | (lg << 8) | lr, over = new Int8Array(width);
    const step = pixelM / f.cellM, c0 = (westM + pixelM / 2 - f.westM) / f.cellM - 0.5;
    const gStep = pixelM / g.cellM, g0 = (westM + pixelM / 2 - g.westM) / g.cellM - 0.5;
    for (let py = 0; py < height; py++) {
      const yM = northM - (py + 0.5) * pixelM, r = (yM - f.southM) / f.cellM - 0.5, y0 = Math.floor(r);
      if (y0 < 0 || y0 + 1 >= f.ny) continue;
      const ty = r - y0, low = y0 * f.nx, high = low + f.nx;
      const gr = Math.min(g.ny - 1.001, Math.max(0, (yM - g.southM) / g.cellM - 0.5)), gy = gr | 0, gt = gr - gy, gLow = gy * g.nx, gHigh = gLow + g.nx;
      const from = Math.max(0, Math.ceil(-c0 / step)), to = Math.min(width, Math.floor((f.nx - 1.001 - c0) / step));
      for (let px = from; px < to; px++) {
        const c = c0 + px * step, x0 = c | 0, tx = c - x0;
        const top = field[low + x0]! + (field[low + x0 + 1]! - field[low + x0]!) * tx;
        const depth = top + (field[high + x0]! + (field[high + x0 + 1]! - field[high + x0]!) * tx - top) * ty;
        if (!(depth > 0)) { over[px] = 0; continue; }
        let gc = g0 + px * gStep;
        gc = gc < 0 ? 0 : gc > g.nx - 1.001 ? g.nx - 1.001 : gc;
        const gx = gc | 0, gu = gc - gx;
        const south = moved[gLow + gx]! * (1 - gu) + moved[gLow + gx + 1]! * gu, north = moved[gHigh + gx]! * (1 - gu) + moved[gHigh + gx + 1]! * gu;
        const offset = south * (1 - gt) + north * gt;
        let tone = ((rest + offset - wind.lowM) * perM) | 0;
        tone = tone < 0 ? 0 : tone >= tones ? tones - 1 : tone;
        const level = depth > offset ? levels[((depth - offset) * beltSteps) | 0]! : 0;
        const at = py * width + px, side = wind.belt ? (depth - offset > rest ? 1 : -1) : 0, above = over[px]!;
        const left = px > from ? over[px - 1]! : 0;
        over[px] = side;
        out[at] = colours[tone * 4 + level]!;
        if (left === -side && left !== 0) out[at] = out[at - 1] = line;
        if (above === -side && above !== 0) out[at] = out[at - width] = line;
      }
    }
  }
}

// Strokes of one weight are one path: a pen is set and drawn with a few times a frame, not once a cell.
const weights = 6, highestM = 0.5;

interface Scratch { of: Frame; wave: Float32Array; east: Float32Array; north: Float32Array; moved: Float32Array }
let scratch: Scratch | undefined;

function scratchFor(f: Frame): Scratch {
  if (scratch?.of === f) return scratch;
  const grid = (): Float32Array => new Float32Array(f.nx * f.ny);
  return scratch = { of: f, wave: grid(), east: grid(), north: grid(), moved: grid() };
}

/** Strokes along the wind, longer and heavier where it has raised waves; waved strokes along the current under the layer; depths in feet or metres. */
export function drawWindInk(ctx: CanvasRenderingContext2D, model: LakeModel, wind: WindModel, palette: Palette, w: Window): void {
  const f = wind.frame, hour = Math.min(wind.hours - 1, Math.max(0, Math.round(model.windHour))), pxM = w.pixelM * w.ratio;
  const { wave: waves, east, north } = scratchFor(f);
  atHour(wind, wind.wave, model.windHour, waves);
  atHour(wind, wind.east, model.windHour, east);
  atHour(wind, wind.north, model.windHour, north);
  const to = ((wind.fromDeg[hour] ?? 0) + 180) * Math.PI / 180, ux = Math.sin(to), uy = Math.cos(to);
  ctx.save();
  const k = 1 / w.pixelM;
  ctx.setTransform(k, 0, 0, -k, -w.westM * k, w.northM * k);
  ctx.lineCap = "round";
  ctx.strokeStyle = palette.ink;
  const every = Math.max(1, Math.round(Math.max(f.cellM, 15 * pxM) / f.cellM)), strokes: (Path2D | undefined)[] = [], flow = new Path2D();
  for (const cell of wind.cells) {
    const ix = cell % f.nx, iy = (cell / f.nx) | 0;
    if (ix % every !== 0 || iy % every !== 0) continue;
    const x = f.westM + (ix + 0.5) * f.cellM, y = f.southM + (iy + 0.5) * f.cellM, wave = waves[cell]!;
    if (wave > 0.03) {
      const half = Math.min(9, 2 + wave * 22) * pxM, path = strokes[Math.min(weights - 1, (wave / highestM * weights) | 0)] ??= new Path2D();
      path.moveTo(x - ux * half, y - uy * half);
      path.lineTo(x + ux * half, y + uy * half);
    }
    const e = east[cell]!, no = north[cell]!, speed = Math.hypot(e, no);
    if (speed > 0.008 && (ix / every + iy / every) % 2 === 0) {
      const half = Math.min(10, 3 + speed * 120) * pxM, vx = e / speed, vy = no / speed, bend = 2.2 * pxM;
      flow.moveTo(x - vx * half, y - vy * half);
      flow.bezierCurveTo(x - vx * half / 3 - vy * bend, y - vy * half / 3 + vx * bend, x + vx * half / 3 + vy * bend, y + vy * half / 3 - vx * bend, x + vx * half, y + vy * half);
    }
  }
  strokes.forEach((path, weight) => {
    const wave = (weight + 0.5) / weights * highestM;
    ctx.globalAlpha = Math.min(0.85, 0.25 + wave * 1.6);
    ctx.lineWidth = Math.min(2.4, 0.7 + wave * 3.2) * pxM;
    if (path) ctx.stroke(path);
  });
  ctx.globalAlpha = 0.75;
  ctx.lineWidth = 1.1 * pxM;
  ctx.stroke(flow);
  ctx.globalAlpha = 1;
  ctx.restore();
  if (wind.belt) drawDepths(ctx, model, wind, palette, w);
}

let serif: string | undefined;

function drawDepths(ctx: CanvasRenderingContext2D, model: LakeModel, wind: WindModel, palette: Palette, w: Window): void {
  const f = wind.frame, moved = atHour(wind, wind.offset, model.windHour, scratchFor(f).moved), rest = wind.belt![3]!;
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  const size = 14 * w.ratio;
  ctx.font = `600 ${size}px ${serif ??= getComputedStyle(document.body).getPropertyValue("--serif") || "serif"}`;
  ctx.textAlign = "center";
  ctx.textBaseline = "middle";
  const taken: number[][] = [];
  for (const place of wind.places) {
    const x = (place.xM - w.westM) / w.pixelM, y = (w.northM - place.yM) / w.pixelM, offset = sample(moved, f, place.xM, place.yM);
    const depthM = Math.max(0, rest + offset), shown = model.metric ? depthM.toFixed(1) : String(Math.round(depthM / 0.3048));
    const label = `${shown} ${Math.abs(offset) < 0.15 ? "" : offset > 0 ? "↓" : "↑"}`.trim(), wide = ctx.measureText(label).width + 12 * w.ratio, high = 22 * w.ratio;
    if (taken.some(([tx, ty, tw]) => Math.abs(tx! - x) < (tw! + wide) / 2 && Math.abs(ty! - y) < high)) continue;
    taken.push([x, y, wide]);
    ctx.fillStyle = palette.sheet;
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = 1.2 * w.ratio;
    ctx.beginPath();
    ctx.roundRect(x - wide / 2, y - high / 2, wide, high, 3 * w.ratio);
    ctx.fill();
    ctx.stroke();
    ctx.fillStyle = palette.ink;
    ctx.fillText(label, x, y + w.ratio);
  }
  ctx.restore();
}
