// What all charts on the page show: one lake, one belt. Filled from the engine's answers.
import type { Frame } from "./field";
import type { Lines } from "./contours";
import type { WindModel } from "./wind";
import type { ChartMark, PassMark, RouteDrawing, SpotMark } from "../worker/desk";

export interface Position { xM: number; yM: number; headingDeg: number | null; accuracyM: number }

/** Depths, m, between which the thermocline lies with growing chance: p10, p20, p35, p50, p65, p80, p90. */
export type BeltDepths = readonly [number, number, number, number, number, number, number];

export interface LakeModel {
  /** Which water is shown: its frame in words, empty for none. */
  water: string;
  frame: Frame | null;
  field: Float32Array;
  maxDepthM: number;
  contours: Lines | null;
  indexStepM: number;
  shoreline: Lines | null;
  belt: BeltDepths | null;
  /** The second shore as the engine traced it for the belt's median. */
  secondShore: Lines | null;
  /** A "what if" depth is being tried: drawn, but not kept. */
  whatIf: boolean;
  marks: readonly ChartMark[];
  spots: readonly SpotMark[];
  chosen: string;
  passes: readonly PassMark[];
  route: RouteDrawing | null;
  /** What the wind does to the water, and the hour shown of it. */
  wind: WindModel | null;
  windHour: number;
  /** The place whose hours are looked at. */
  looked: readonly [number, number] | null;
  position: Position | null;
  /** The boat's way of the last minutes, x, y pairs in m, and the jig behind it. */
  track: readonly number[];
  jig: readonly [number, number] | null;
  metric: boolean;
}

export const model: LakeModel = {
  water: "", frame: null, field: new Float32Array(), maxDepthM: 0, contours: null, indexStepM: 15.24, shoreline: null, belt: null,
  secondShore: null, whatIf: false, marks: [], spots: [], chosen: "", passes: [], route: null, wind: null, windHour: 0, looked: null, position: null, track: [], jig: null, metric: false,
};

type Part = "lake" | "water" | "belt" | "marks" | "position" | "theme" | "wind";
const listeners = new Set<(part: Part) => void>();
export function onModel(listener: (part: Part) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
export function changed(part: Part): void { for (const listener of [...listeners]) listener(part); }
