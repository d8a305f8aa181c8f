// Depth washes and the belt's three nested fills, one look-up per pixel.
import type { Frame } from "./field";
import type { BeltDepths } from "./model";
import { rgb, washStepsM, type Palette } from "./palette";

const stepsPerM = 20;
/** Strokes of the belt: how far apart and how thick along a row, in pixels of the screen. */
const apartPx = 6, thickPx = 1.6;

/** Colours by depth in steps of 5 cm, as little-endian ABGR: of the ground, and of the strokes that the belt is hatched with. */
export interface WaterColours { ground: Uint32Array; strokes: Uint32Array }

/** However wide the belt is, it stays a hatching: a flat fill would hide the bottom, and tell nothing on a black and white page. */
export const colourTable = (palette: Palette, belt: BeltDepths | null, maxDepthM: number): WaterColours =>
  ({ ground: shaded(palette, belt, maxDepthM, [0.1, 0.14, 0.34]), strokes: shaded(palette, belt, maxDepthM, [0.42, 0.3, 0.5]) });

function shaded(palette: Palette, belt: BeltDepths | null, maxDepthM: number, shares: readonly [number, number, number]): Uint32Array {
  const table = new Uint32Array(Math.ceil((maxDepthM + 1) * stepsPerM) + 1);
  const washes = palette.washes.map(rgb), accent = rgb(palette.accent);
  for (let i = 0; i < table.length; i++) {
    const d = (i + 0.5) / stepsPerM;
    let w = washStepsM.length - 1;
    while (w > 0 && d < (washStepsM[w] ?? 0)) w--;
    let [r, g, b] = washes[w] ?? [0, 0, 0];
    if (belt) {
      for (const [from, to, share] of [[belt[0], belt[6], shares[0]], [belt[1], belt[5], shares[1]], [belt[2], belt[4], shares[2]]] as const) {
        if (d >= from && d < to) {
          r += (accent[0] - r) * share; g += (accent[1] - g) * share; b += (accent[2] - b) * share;
        }
      }
    }
    table[i] = (255 << 24) | (Math.round(b) << 16) | (Math.round(g) << 8) | Math.round(r);
  }
  return table;
}

/** Paints the window whose north-west corner is (westM, northM) at pixelM metres a pixel. Land stays clear. */
export function paintWater(image: ImageData, field: Float32Array, f: Frame, westM: number, northM: number, pixelM: number, { ground, strokes }: WaterColours, ratio: number): void {
  const out = new Uint32Array(image.data.buffer), { width, height } = image, last = ground.length - 1;
  // The strokes lie fast on the ground while the chart is moved.
  const apart = Math.max(2, Math.round(apartPx * ratio)), thick = Math.max(1, Math.round(thickPx * ratio));
  const shift = ((Math.round((westM - northM) / pixelM) % apart) + apart) % apart;
  const step = pixelM / f.cellM;
  const c0 = (westM + pixelM / 2 - f.westM) / f.cellM - 0.5;
  for (let py = 0; py < height; py++) {
    const r = (northM - (py + 0.5) * pixelM - f.southM) / f.cellM - 0.5;
    const y0 = Math.floor(r);
    if (y0 < 0 || y0 + 1 >= f.ny) continue;
    const ty = r - y0, low = y0 * f.nx, high = low + f.nx;
    const from = Math.max(0, Math.ceil(-c0 / step)), to = Math.min(width, Math.floor((f.nx - 1.001 - c0) / step));
    for (let px = from; px < to; px++) {
      const c = c0 + px * step, x0 = c | 0, tx = c - x0;
      const a = field[low + x0]!, b = field[low + x0 + 1]!, d = field[high + x0]!, e = field[high + x0 + 1]!;
      const top = a + (b - a) * tx, depth = top + (d + (e - d) * tx - top) * ty;
      if (depth > 0) { const k = (depth * stepsPerM) | 0; out[py * width + px] = ((px + py + shift) % apart < thick ? strokes : ground)[k < last ? k : last]!; }
    }
  }
}
