// Takes the engine's arrays into the model that all charts show.
import { changed, model, type BeltDepths } from "./model";
import type { BeltDrawing, Drawing, WaterDrawing } from "../worker/desk";
import type { Lines } from "./contours";
import { readWind } from "./wind";

type Arrays = Record<string, Uint8Array>;
const nothing = {
  water: "", frame: null, contours: null, shoreline: null, belt: null, secondShore: null, spots: [], passes: [], route: null, wind: null, looked: null, chosen: "",
};

const floats = (bytes: Uint8Array): Float32Array => new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);
const ints = (bytes: Uint8Array): Int32Array => new Int32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);

function lines(arrays: Arrays, name: string): Lines | null {
  const points = arrays[`${name}.points`], starts = arrays[`${name}.starts`], levels = arrays[`${name}.levels`];
  if (!points || !starts) return null;
  const s = ints(starts);
  return { points: floats(points), starts: s, levels: levels ? floats(levels) : new Float32Array(Math.max(0, s.length - 1)) };
}

/** Another lake is opened: nothing of the one before stays on a chart. */
export function forgetLake(): void {
  Object.assign(model, nothing, { field: new Float32Array(), marks: [] });
  changed("lake");
}

/** Takes in what the chart draws of an answer. */
export function takeDrawing(drawing: Drawing, arrays: Arrays): void {
  switch (drawing.draws) {
    case "water": return takeWater(drawing, arrays);
    case "belt": return takeBelt(drawing, arrays);
    case "wind":
      model.wind = readWind(drawing, arrays);
      return changed("wind");
    case "route":
      model.route = drawing;
      return changed("marks");
  }
}

/** Takes in the contours of the water that is shown. */
export function takeContours(arrays: Arrays): void {
  model.contours = lines(arrays, "contours");
  changed("water");
}

function takeWater(drawing: WaterDrawing, arrays: Arrays): void {
  const field = arrays["field"];
  // The same water read again, as after a reading, or for the first time here after what came with the app: what is drawn stays until its
  // better follows, and the day's way with it.
  const water = drawing.frame ? JSON.stringify(drawing.frame) : "", same = water !== "" && water === model.water;
  Object.assign(model, same ? { contours: null, wind: null } : nothing, { water });
  if (drawing.frame && field) {
    model.frame = drawing.frame;
    model.maxDepthM = drawing.maxDepthM;
    model.marks = drawing.marks;
    model.field = floats(field);
    model.shoreline = lines(arrays, "shoreline");
  }
  changed("water");
}

function takeBelt(drawing: BeltDrawing, arrays: Arrays): void {
  model.belt = drawing.belt as BeltDepths | null;
  // Places are kept while a depth is tried, until they are ranked anew.
  if (drawing.spots) model.spots = drawing.spots;
  if (drawing.passes) model.passes = drawing.passes;
  if (!model.spots.some((spot) => spot.letter === model.chosen)) model.chosen = model.spots[0]?.letter ?? "";
  model.whatIf = drawing.whatIf;
  model.secondShore = lines(arrays, "second-shore");
  // Another pool level brings its own water's edge; contours follow when they are traced.
  if (arrays["field"]) {
    model.field = floats(arrays["field"]);
    model.shoreline = lines(arrays, "shoreline");
    model.contours = null;
    changed("water");
  } else changed("belt");
}
