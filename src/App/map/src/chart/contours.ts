// Depth contours for drawing, traced off the page's thread.
import { contours } from "d3-contour";
import type { Frame } from "./field";

/** Lines as flat arrays: points are x, y pairs in the plane; line i runs from starts[i] to starts[i + 1] (in points). */
export interface Lines { points: Float32Array; starts: Int32Array; levels: Float32Array }

export function traceContours(field: Float32Array, frame: Frame, levelsM: readonly number[]): Lines {
  const points: number[] = [], starts: number[] = [0], levels: number[] = [];
  const tracer = contours().size([frame.nx, frame.ny]).smooth(true);
  const values = field as unknown as number[];
  for (const level of levelsM) {
    for (const polygon of tracer.contour(values, level).coordinates) {
      for (const ring of polygon) {
        if (ring.length < 6) continue;
        for (const point of ring) {
          // The tracer counts from a cell's corner, so a cell's centre is at 0.5.
          points.push(frame.westM + (point[0] ?? 0) * frame.cellM, frame.southM + (point[1] ?? 0) * frame.cellM);
        }
        starts.push(points.length / 2);
        levels.push(level);
      }
    }
  }
  return { points: Float32Array.from(points), starts: Int32Array.from(starts), levels: Float32Array.from(levels) };
}
