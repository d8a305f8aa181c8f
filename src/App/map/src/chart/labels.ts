// Names, soundings, symbols, stops, passes and the boat, as features over the painted water.
import Feature from "ol/Feature.js";
import LineString from "ol/geom/LineString.js";
import Point from "ol/geom/Point.js";
import Circle from "ol/geom/Circle.js";
import { Circle as Dot, Fill, Stroke, Style, Text } from "ol/style.js";
import { depthAt } from "./field";
import { model, type LakeModel } from "./model";
import type { RouteDrawing, SpotMark } from "../worker/desk";
import type { Palette } from "./palette";
import { arrowIcon, boatIcon, letterIcon, symbolIcon } from "./symbols";

const serif = 'Besley,Rockwell,"Roboto Slab",Georgia,serif', sans = 'Archivo,"Helvetica Neue",Arial,sans-serif';

/** Leaders that a letter may hang on, in pixels from its place. */
const leaders: readonly [number, number][] = [[26, -20], [-26, -20], [26, 20], [-26, 20], [0, -32], [0, 32], [32, 0], [-32, 0]];

/** The leader that covers the least water of interest: it ends on land or far from other places. */
function leaderFor(spot: SpotMark, others: readonly SpotMark[], pixelM: number): [number, number] {
  let best = leaders[0]!, least = Infinity;
  for (const leader of leaders) {
    const x = spot.xM + leader[0] * pixelM, y = spot.yM - leader[1] * pixelM;
    const depth = model.frame ? depthAt(model.field, model.frame, x, y) : NaN;
    let cost = depth > 0 ? Math.min(1, depth / 30) : 0;
    for (const other of others) {
      if (other === spot) continue;
      const gap = Math.hypot(other.xM - x, other.yM - y) / pixelM;
      if (gap < 40) cost += (40 - gap) / 10;
    }
    if (cost < least) { least = cost; best = leader; }
  }
  return best;
}

export function spotFeatures(palette: Palette, pixelM: number, spots: readonly SpotMark[], acting: string, still: boolean): Feature[] {
  // A small still chart has room for the best places only.
  return (still ? spots.slice(0, 6) : spots).map((spot) => {
    const feature = new Feature({ geometry: new Point([spot.xM, spot.yM]), letter: spot.letter, name: spot.name });
    const [dx, dy] = leaderFor(spot, spots, pixelM);
    feature.setStyle(new Style({
      image: letterIcon(spot.letter, spot.letter === acting, palette, dx, dy),
      zIndex: spot.letter === acting ? 30 : 20,
    }));
    return feature;
  });
}

/** From how near a mark is shown, metres a pixel: cover is many, ramps are few. */
const nearest = (kind: string): number => (kind === "ramp" || kind === "water" ? 60 : kind === "land" || kind === "hazard" ? 9 : 4.5);

export function markFeatures(palette: Palette, pixelM: number): Feature[] {
  return model.marks.filter((mark) => pixelM < nearest(mark.kind)).map((mark) => {
    const feature = new Feature(new Point([mark.xM, mark.yM]));
    const styles: Style[] = [];
    const water = mark.kind === "water", land = mark.kind === "land";
    if (!water && !land) styles.push(new Style({ image: symbolIcon(mark.kind, palette), zIndex: 10 }));
    if (mark.name) {
      styles.push(new Style({
        text: new Text({
          text: mark.name,
          font: water ? `italic 500 17px ${serif}` : `550 13px ${sans}`,
          fill: new Fill({ color: palette.ink }),
          stroke: new Stroke({ color: `${palette.halo}8C`, width: 3.5 }),
          offsetY: water || land ? 0 : 20,
          overflow: true,
        }),
        zIndex: water ? 6 : 4,
      }));
    }
    feature.setStyle(styles);
    return feature;
  });
}

/** Soundings on an even scatter, one about every 90 pixels, in the user's unit. */
export function soundingFeatures(palette: Palette, extent: number[], pixelM: number): Feature[] {
  const { frame, field } = model;
  if (!frame || pixelM > 40) return [];
  const every = 92 * pixelM, out: Feature[] = [];
  const [west, south, east, north] = extent as [number, number, number, number];
  for (let row = Math.floor(south / every); row * every < north; row++) {
    for (let column = Math.floor(west / every); column * every < east; column++) {
      // The same place gets the same shift whatever is in view.
      const shift = Math.sin(row * 12.9898 + column * 78.233) * 43758.5453, u = shift - Math.floor(shift);
      const x = (column + 0.2 + 0.6 * u + (row % 2 ? 0.5 : 0)) * every, y = (row + 0.2 + 0.6 * ((u * 7) % 1)) * every;
      const depthM = depthAt(field, frame, x, y);
      if (!(depthM > 2.4) || nearShore(model, x, y, 14 * pixelM)) continue;
      const feature = new Feature(new Point([x, y]));
      feature.setStyle(new Style({
        text: new Text({
          text: String(Math.round(model.metric ? depthM : depthM / 0.3048)),
          font: `italic 500 12px ${serif}`,
          fill: new Fill({ color: palette.sound }),
        }),
        zIndex: 1,
      }));
      out.push(feature);
    }
  }
  return out;
}

function nearShore(m: LakeModel, x: number, y: number, withinM: number): boolean {
  if (!m.frame) return true;
  for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
    if (!(depthAt(m.field, m.frame, x + dx * withinM, y + dy * withinM) > 0)) return true;
  }
  return false;
}

export function passFeatures(palette: Palette, route: RouteDrawing | null, acting: string, still: boolean): Feature[] {
  const out: Feature[] = [];
  const passes = route ? route.passes : still ? [] : model.passes.filter((pass) => pass.letter === acting);
  for (const leg of route?.legs ?? []) {
    const feature = new Feature(new LineString(pairs(leg)));
    feature.setStyle(new Style({ stroke: new Stroke({ color: palette.ink, width: 1.8, lineDash: [1, 5], lineCap: "round" }), zIndex: 11 }));
    out.push(feature);
  }
  for (const pass of passes) {
    const line = pairs(pass.points);
    if (line.length < 2) continue;
    const feature = new Feature(new LineString(line));
    const [ax, ay] = line[line.length - 2]!, [bx, by] = line[line.length - 1]!;
    feature.setStyle([
      new Style({ stroke: new Stroke({ color: `${palette.halo}CC`, width: 6, lineCap: "round" }), zIndex: 12 }),
      new Style({ stroke: new Stroke({ color: palette.ink, width: 2.6, lineDash: [9, 4], lineCap: "butt" }), zIndex: 13 }),
      new Style({
        geometry: new Point([bx!, by!]),
        image: arrowIcon(palette, Math.atan2(bx! - ax!, by! - ay!)),
        zIndex: 14,
      }),
    ]);
    out.push(feature);
  }
  return out;
}

const pairs = (flat: readonly number[]): number[][] => {
  const out: number[][] = [];
  for (let i = 0; i + 1 < flat.length; i += 2) out.push([flat[i]!, flat[i + 1]!]);
  return out;
};

/** The place whose hours are looked at: a ring that leaves the water in it to be seen. */
export function lookedFeatures(palette: Palette): Feature[] {
  if (!model.looked) return [];
  const ring = (color: string, width: number): Style => new Style({ image: new Dot({ radius: 11, stroke: new Stroke({ color, width }) }), zIndex: 36 });
  const feature = new Feature(new Point([...model.looked]));
  feature.setStyle([ring(`${palette.halo}CC`, 5), ring(palette.ink, 2.2)]);
  return [feature];
}

/** The boat's way as a plain line, and the jig that follows on it. */
export function trackFeatures(palette: Palette): Feature[] {
  const out: Feature[] = [], way = pairs(model.track);
  if (way.length > 1) {
    const line = new Feature(new LineString(way));
    line.setStyle(new Style({ stroke: new Stroke({ color: palette.ink, width: 1.4 }), zIndex: 37 }));
    out.push(line);
  }
  if (model.jig) {
    const jig = new Feature(new Point([...model.jig]));
    jig.setStyle(new Style({ image: new Dot({ radius: 5.5, fill: new Fill({ color: palette.belt }), stroke: new Stroke({ color: palette.ink, width: 1.4 }) }), zIndex: 38 }));
    out.push(jig);
  }
  return out;
}

export function meFeatures(palette: Palette): Feature[] {
  const me = model.position;
  if (!me) return [];
  const out: Feature[] = [];
  if (me.accuracyM > 9) {
    const circle = new Feature(new Circle([me.xM, me.yM], me.accuracyM));
    circle.setStyle(new Style({ stroke: new Stroke({ color: palette.ink, width: 1.5, lineDash: [1, 5], lineCap: "round" }), zIndex: 39 }));
    out.push(circle);
  }
  const feature = new Feature(new Point([me.xM, me.yM]));
  feature.setStyle(new Style({
    image: boatIcon(palette, me.headingDeg),
    zIndex: 40,
  }));
  out.push(feature);
  return out;
}
