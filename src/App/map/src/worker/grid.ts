// The worker's own copy of the bottom, for tracing what is drawn: shoreline and contours.
import { traceContours, type Lines } from "../chart/contours";
import { withLandFilled, type Frame } from "../chart/field";

let frame: Frame | null = null;
let field = new Float32Array();
let maxDepthM = 0;

export function takeGrid(of: Frame, depthM: Float32Array): void {
  frame = of;
  field = withLandFilled(depthM, of.nx, of.ny) as Float32Array<ArrayBuffer>;
  maxDepthM = field.reduce((most, depth) => Math.max(most, depth), 0);
}

const bytes = (array: Float32Array | Int32Array): Uint8Array => new Uint8Array(array.buffer as ArrayBuffer, array.byteOffset, array.byteLength);

function named(name: string, lines: Lines): Record<string, Uint8Array> {
  return { [`${name}.points`]: bytes(lines.points), [`${name}.starts`]: bytes(lines.starts), [`${name}.levels`]: bytes(lines.levels) };
}

/** The bottom for the page, and the water's edge. */
export function waterArrays(): Record<string, Uint8Array> {
  if (!frame) return {};
  return { field: bytes(field.slice()), ...named("shoreline", traceContours(field, frame, [0])) };
}

export function contoursFor(metric: boolean): Record<string, Uint8Array> {
  if (!frame) return {};
  const stepM = metric ? 1 : 5 * 0.3048, levels: number[] = [];
  for (let level = stepM; level < maxDepthM; level += stepM) levels.push(level);
  return named("contours", traceContours(field, frame, levels));
}
