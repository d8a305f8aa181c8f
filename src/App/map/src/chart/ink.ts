// Contours, shoreline, second shore and its strokes, drawn with pen widths in pixels at every zoom.
import { slopeAt } from "./field";
import type { Lines } from "./contours";
import type { LakeModel } from "./model";
import type { Palette } from "./palette";

export interface Window { westM: number; northM: number; pixelM: number; width: number; height: number; ratio: number }

const paths = new WeakMap<Lines, Map<number, Path2D>>();

/** One path a level, in the plane's metres; traced once and kept with the lines. */
function pathsOf(lines: Lines): Map<number, Path2D> {
  let found = paths.get(lines);
  if (found) return found;
  found = new Map();
  for (let i = 0; i + 1 < lines.starts.length; i++) {
    const level = lines.levels[i] ?? 0;
    let path = found.get(level);
    if (!path) found.set(level, path = new Path2D());
    const from = lines.starts[i]!, to = lines.starts[i + 1]!;
    for (let p = from; p < to; p++) {
      const x = lines.points[2 * p]!, y = lines.points[2 * p + 1]!;
      if (p === from) path.moveTo(x, y); else path.lineTo(x, y);
    }
  }
  paths.set(lines, found);
  return found;
}

export function drawInk(ctx: CanvasRenderingContext2D, model: LakeModel, palette: Palette, w: Window): void {
  const k = 1 / w.pixelM, pen = (px: number): number => px * w.ratio * w.pixelM;
  ctx.save();
  ctx.setTransform(k, 0, 0, -k, -w.westM * k, w.northM * k);
  ctx.lineJoin = "round";
  ctx.lineCap = "round";
  if (model.contours) drawContours(ctx, model, palette, pen, w.pixelM * w.ratio);
  if (model.secondShore) {
    // From 1:25 000 inwards (about 6.6 m a pixel) the belt is also drawn as strokes across the slope.
    if (w.pixelM * w.ratio < 6.6) drawStrokes(ctx, model, model.secondShore, palette, w, pen);
    ctx.strokeStyle = palette.belt;
    ctx.lineWidth = pen(1.6);
    for (const path of pathsOf(model.secondShore).values()) ctx.stroke(path);
  }
  if (model.shoreline) {
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = pen(1.5);
    for (const path of pathsOf(model.shoreline).values()) ctx.stroke(path);
  }
  ctx.restore();
}

function drawContours(ctx: CanvasRenderingContext2D, model: LakeModel, palette: Palette, pen: (px: number) => number, cssPixelM: number): void {
  const lines = pathsOf(model.contours!);
  const fineM = model.metric ? 1 : 5 * 0.3048;
  const everyM = cssPixelM < 3.2 ? fineM : cssPixelM < 8 ? 2 * fineM : 4 * fineM;
  for (const [level, path] of lines) {
    const index = multipleOf(level, model.indexStepM);
    if (!index && !multipleOf(level, everyM)) continue;
    ctx.strokeStyle = palette.contour;
    ctx.globalAlpha = palette.contourOpacity + (index ? 0.16 : 0);
    ctx.lineWidth = pen(index ? 1.1 : 0.6);
    ctx.stroke(path);
  }
  ctx.globalAlpha = 1;
}

const multipleOf = (level: number, step: number): boolean => Math.abs(level / step - Math.round(level / step)) < 1e-3;

/** Strokes across the slope: full at the median, pointed where the depth reaches p10 and p90. Long means unsure. */
function drawStrokes(ctx: CanvasRenderingContext2D, model: LakeModel, lines: Lines, palette: Palette, w: Window, pen: (px: number) => number): void {
  const belt = model.belt, frame = model.frame;
  if (!belt || !frame) return;
  const pxM = w.pixelM * w.ratio, halfM = pen(0.9);
  const eastM = w.westM + w.width * w.pixelM, southM = w.northM - w.height * w.pixelM;
  ctx.fillStyle = palette.belt;
  ctx.beginPath();
  for (let i = 0; i + 1 < lines.starts.length; i++) {
    let untilNextM = 0;
    for (let p = lines.starts[i]!; p + 1 < lines.starts[i + 1]!; p++) {
      const x = lines.points[2 * p]!, y = lines.points[2 * p + 1]!;
      const dx = lines.points[2 * p + 2]! - x, dy = lines.points[2 * p + 3]! - y, length = Math.hypot(dx, dy);
      while (untilNextM < length) {
        const t = untilNextM / length, sx = x + dx * t, sy = y + dy * t;
        if (sx < w.westM || sx > eastM || sy < southM || sy > w.northM) { untilNextM += 5 * pxM; continue; }
        const [gx, gy] = slopeAt(model.field, frame, sx, sy), slope = Math.hypot(gx, gy);
        if (!(slope > 1e-5)) { untilNextM += 5 * pxM; continue; }
        const longest = 46 * pxM;
        const up = Math.min(longest, Math.max(1.6 * pxM, (belt[3] - belt[0]) / slope));
        const down = Math.min(longest, Math.max(1.6 * pxM, (belt[6] - belt[3]) / slope));
        const ux = gx / slope, uy = gy / slope;
        ctx.moveTo(sx - ux * up, sy - uy * up);
        ctx.lineTo(sx - uy * halfM, sy + ux * halfM);
        ctx.lineTo(sx + ux * down, sy + uy * down);
        ctx.lineTo(sx + uy * halfM, sy - ux * halfM);
        ctx.closePath();
        untilNextM += pxM * Math.min(9, Math.max(4, 2.6 + (up + down) / pxM / 7));
      }
      untilNextM -= length;
    }
  }
  ctx.fill();
}
