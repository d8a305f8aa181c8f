// Takes the engine's arrays into the model that all charts show.
import { changed, model, type BeltDepths, type Mark, type PassLine, type Route, type SpotMark } from "./model";
import type { Frame } from "./field";
import type { Lines } from "./contours";
import { readWind } from "./wind";

type Arrays = Record<string, Uint8Array>;
interface OpenJson { chart?: { frame: Frame; maxDepthM: number; marks: Mark[] } | null }
interface ShoreJson { chart?: { belt?: number[] | null; spots?: SpotMark[] | null; passes?: PassLine[] | null } | null; whatIf?: boolean }
interface DayJson { chart?: Route | null }

const nothing = { frame: null, contours: null, shoreline: null, belt: null, secondShore: null, spots: [], passes: [], route: null, wind: null, looked: null, chosen: "" };

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

export function take(verb: string, json: string, arrays: Arrays): void {
  if (verb === "open") {
    const chart = (JSON.parse(json) as OpenJson).chart, field = arrays["field"];
    // The same water read again, as after a reading: what is drawn stays until its better follows, and the day's way with it.
    const same = chart && model.frame && JSON.stringify(chart.frame) === JSON.stringify(model.frame);
    Object.assign(model, same ? { contours: null, wind: null } : nothing);
    if (chart && field) {
      model.frame = chart.frame;
      model.maxDepthM = chart.maxDepthM;
      model.marks = chart.marks;
      model.field = floats(field);
      model.shoreline = lines(arrays, "shoreline");
    }
    changed("water");
  } else if (verb === "contours") {
    model.contours = lines(arrays, "contours");
    changed("water");
  } else if (verb === "shore" || verb === "slice") {
    const shore = JSON.parse(json) as ShoreJson;
    model.belt = (shore.chart?.belt ?? null) as BeltDepths | null;
    // Places are kept while a depth is tried, until they are ranked anew.
    if (shore.chart?.spots) model.spots = shore.chart.spots;
    if (shore.chart?.passes) model.passes = shore.chart.passes;
    if (!model.spots.some((spot) => spot.letter === model.chosen)) model.chosen = model.spots[0]?.letter ?? "";
    model.whatIf = shore.whatIf ?? false;
    model.secondShore = lines(arrays, "second-shore");
    // Another pool level brings its own water's edge; contours follow when they are traced.
    if (arrays["field"]) {
      model.field = floats(arrays["field"]);
      model.shoreline = lines(arrays, "shoreline");
      model.contours = null;
      changed("water");
    } else changed("belt");
  } else if (verb === "wind") {
    model.wind = readWind(json, arrays);
    changed("wind");
  } else if (verb === "day") {
    model.route = (JSON.parse(json) as DayJson).chart ?? null;
    changed("marks");
  }
}
