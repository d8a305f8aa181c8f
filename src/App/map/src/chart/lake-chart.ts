// One chart of the lake: painted water below, names and symbols above, a frame that is the scale.
import OlMap from "ol/Map.js";
import View from "ol/View.js";
import Projection from "ol/proj/Projection.js";
import ImageLayer from "ol/layer/Image.js";
import VectorLayer from "ol/layer/Vector.js";
import ImageCanvasSource from "ol/source/ImageCanvas.js";
import VectorSource from "ol/source/Vector.js";
import { defaults as defaultInteractions } from "ol/interaction.js";
import { containsXY, createEmpty, extend, isEmpty, type Extent } from "ol/extent.js";
import { model, onModel } from "./model";
import type { RouteDrawing } from "../worker/desk";
import { depthAt } from "./field";
import { onSizeNow } from "../device/size";
import { drawInk } from "./ink";
import { lookedFeatures, markFeatures, meFeatures, passFeatures, soundingFeatures, spotFeatures, trackFeatures } from "./labels";
import { readPalette, type Palette } from "./palette";
import { colourTable, paintWater, type WaterColours } from "./raster";
import { DepthRule, type RuleListener } from "./rule";
import { scaleBar } from "./scale";
import { WindFilm } from "./film";

export interface ChartOptions {
  /** Still charts take no gestures and show the whole lake. */
  still: boolean;
  rule: boolean;
  /** Shows the day's route with its stops instead of all places. */
  route: boolean;
  /** Shows the water as the wind moves it, at the model's hour. */
  wind: boolean;
  ruleLabel: string;
  /** Bars of the frame, m. */
  feetBarM: number;
  metricBarM: number;
}

export interface ChartListener extends RuleListener {
  invokeMethodAsync(name: "OnWhatIf" | "OnSpot" | "OnTap", ...args: unknown[]): Promise<unknown>;
}

// What an angler under way looks for: the next stop with its pass, the boat and the jig behind it.
const atHand = (route: RouteDrawing): number[][] => [
  ...route.passes.filter((pass) => pass.letter === route.next).map((pass) => pass.points), ...route.stops.filter((stop) => stop.letter === route.next).map((stop) => [stop.xM, stop.yM]),
  ...(model.position ? [[model.position.xM, model.position.yM]] : []), ...(model.jig ? [[...model.jig]] : []),
];

const around = (lines: readonly (readonly number[])[]): Extent => {
  let extent = createEmpty();
  for (const line of lines) {
    for (let i = 0; i + 1 < line.length; i += 2) extent = extend(extent, [line[i]!, line[i + 1]!, line[i]!, line[i + 1]!]);
  }
  return extent;
};

const plane = new Projection({ code: "lake-plane", units: "m", global: false });

export class LakeChart {
  private readonly map: OlMap;
  /** The whole day's way, or the whole lake, was asked for and nobody moved the chart since: a new size shows it anew. */
  private routeFramed = false;
  private wholeFramed = false;
  /** The stop that was next when the way was framed. */
  private framedFor = "";
  private water: { of: Float32Array; extent: Extent } | undefined;
  private readonly painted: ImageCanvasSource;
  private readonly soundings = new VectorSource();
  private readonly names = new VectorSource();
  private readonly features = new VectorSource();
  private readonly off: () => void;
  private readonly resized: ResizeObserver;
  private rule: DepthRule | undefined;
  private palette: Palette;
  private table: WaterColours | undefined;
  private readonly windFilm = new WindFilm();
  private framed = false;

  constructor(private readonly host: HTMLElement, private readonly options: ChartOptions, private readonly listener: ChartListener | null) {
    this.palette = readPalette(host);
    const target = host.querySelector<HTMLElement>(".water")!;
    this.painted = new ImageCanvasSource({ canvasFunction: (e, r, ratio, size) => this.paint(e, r, ratio, size as [number, number]), projection: plane, ratio: options.wind ? 1 : 1.3, interpolate: true });
    this.map = new OlMap({
      target,
      controls: [],
      interactions: options.still ? [] : defaultInteractions({ altShiftDragRotate: true }),
      layers: [
        new ImageLayer({ source: this.painted }),
        new VectorLayer({ source: this.soundings, declutter: true, updateWhileInteracting: false }),
        new VectorLayer({ source: this.names, declutter: true, updateWhileInteracting: false }),
        new VectorLayer({ source: this.features, updateWhileInteracting: true, updateWhileAnimating: true }),
      ],
      view: new View({ projection: plane, center: [0, 0], resolution: 20, maxResolution: 200, minResolution: 0.15, constrainRotation: false }),
    });
    const ruleHost = host.querySelector<HTMLElement>(".rule-l");
    if (options.rule && ruleHost) this.rule = new DepthRule(ruleHost, listener, options.ruleLabel);
    this.map.on("moveend", () => this.settle());
    this.map.on("pointerdrag", () => this.moved());
    target.addEventListener("wheel", () => this.moved(), { passive: true });
    this.map.on("singleclick", (event) => this.tap(event.pixel, event.coordinate));
    // With keys alone the chart is moved until the place is in its middle; a cross stands there meanwhile.
    target.addEventListener("keydown", (event) => {
      const size = this.map.getSize(), centre = this.map.getView().getCenter();
      if (event.key === "Enter" && size && centre) this.tap([size[0]! / 2, size[1]! / 2], centre);
    });
    const offs = [onModel((part) => this.refresh(part)), onSizeNow((isLast) => { if (isLast) this.paintNow(); })];
    this.off = () => { for (const off of offs) off(); };
    this.resized = new ResizeObserver(() => this.fitted());
    this.resized.observe(host);
    host.toggleAttribute("data-drawn", model.frame !== null);
    this.fitted();
  }

  dispose(): void {
    this.off();
    this.resized.disconnect();
    this.rule?.dispose();
    this.map.setTarget(undefined);
    this.map.dispose();
  }

  /** Shows the whole lake. */
  whole(): void {
    const extent = this.lakeExtent();
    if (!extent) return;
    this.map.getView().fit(extent, { padding: this.padding() });
    this.routeFramed = false;
    this.wholeFramed = true;
  }

  private moved(): void { this.routeFramed = this.wholeFramed = false; }

  /** Shows the day's way: all of it, or on a low strip what is at hand. */
  wholeRoute(): void {
    const route = model.route, size = this.map.getSize();
    const lines = route ? (this.isStrip() ? atHand(route) : [...route.legs, ...route.passes.map((pass) => pass.points), ...route.stops.map((stop) => [stop.xM, stop.yM])]) : [];
    const extent = around(lines);
    if (!size || isEmpty(extent)) {
      this.whole();
      // Asked before the day was there: it is shown once it is.
      this.routeFramed = true;
      return;
    }
    this.framed = true;
    [this.routeFramed, this.wholeFramed, this.framedFor] = [true, false, route?.next ?? ""];
    const room = Math.min(48, 0.15 * Math.min(size[0]!, size[1]!));
    this.map.getView().fit(extent, { padding: [room, room, room, room], minResolution: 1.5 });
    this.refresh("water");
  }

  // Too low to tell anything of a whole day.
  private isStrip(): boolean { return (this.map.getSize()?.[1] ?? 0) < 200; }

  // The way is shown once it is known; a strip follows the boat and the stop that is next. Until someone moves the chart.
  private follow(): void {
    const view = this.map.getView(), boat = model.position;
    if (!this.routeFramed || !model.route || view.getAnimating()) return;
    const late = this.framedFor === "", moved = model.route.next !== this.framedFor || (boat !== null && !containsXY(view.calculateExtent(), boat.xM, boat.yM));
    if (late || (this.isStrip() && moved)) this.wholeRoute();
  }

  /** Moves to a place; keeps the zoom where it is closer than the given one. */
  goTo(xM: number, yM: number, pixelM: number): void {
    this.moved();
    const view = this.map.getView(), still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    const resolution = Math.min(view.getResolution() ?? pixelM, pixelM), [, right] = this.padding();
    const to = { center: [xM + ((right ?? 0) / 2 - 8) * resolution, yM], resolution };
    if (still || !this.framed) { view.setCenter(to.center); view.setResolution(to.resolution); } else view.animate({ ...to, duration: 250 });
  }

  zoom(by: number): void {
    const view = this.map.getView();
    this.moved();
    view.animate({ zoom: (view.getZoom() ?? 0) + by, duration: 150 });
  }

  north(): void { this.map.getView().animate({ rotation: 0, duration: 150 }); }

  private padding(): number[] { return [18, this.rule ? 92 : 18, 18, 18]; }

  private lakeExtent(): Extent | null {
    const f = model.frame, field = model.field;
    if (!f) return null;
    if (this.water?.of === field) return this.water.extent;
    let west = f.nx, east = -1, south = f.ny, north = -1;
    for (let y = 0; y < f.ny; y++) {
      for (let x = 0; x < f.nx; x++) {
        if (!(field[y * f.nx + x]! > 0)) continue;
        if (x < west) west = x;
        if (x > east) east = x;
        if (y < south) south = y;
        north = y;
      }
    }
    if (east < 0) [west, east, south, north] = [0, f.nx - 1, 0, f.ny - 1];
    const extent: Extent = [f.westM + west * f.cellM, f.southM + south * f.cellM, f.westM + (east + 1) * f.cellM, f.southM + (north + 1) * f.cellM];
    this.water = { of: field, extent };
    return extent;
  }

  private fitted(): void {
    this.map.updateSize();
    const size = this.map.getSize();
    if (!this.framed && model.frame && size && size[0]! > 40 && size[1]! > 40) {
      this.framed = true;
      if (this.routeFramed) this.wholeRoute();
      else if (!this.map.getView().getAnimating()) this.whole();
      this.refresh("water");
    } else if (this.options.still) this.whole();
    else if (this.routeFramed) this.wholeRoute();
    else if (this.wholeFramed) this.whole();
    this.bars();
  }

  // On paper its height is the style's, whatever its width: it is painted once.
  private paintNow(): void {
    this.fitted();
    this.map.renderSync();
  }

  private refresh(part: string): void {
    this.host.toggleAttribute("data-drawn", model.frame !== null);
    if (part === "theme") this.palette = readPalette(this.host);
    if (part === "wind") { if (this.options.wind) this.painted.changed(); return; }
    if (part === "lake") this.forget();
    if (part === "water" && !this.framed) { this.fitted(); return; }
    if (part === "position" || part === "marks") this.follow();
    if (part !== "position") {
      this.table = undefined;
      this.painted.changed();
    }
    this.settle();
  }

  // The next lake is framed anew, as this one was asked to be.
  private forget(): void {
    this.framed = this.wholeFramed = false;
    this.framedFor = "";
    for (const source of [this.features, this.names, this.soundings]) source.clear(true);
  }

  private settle(): void {
    const view = this.map.getView(), pixelM = view.getResolution();
    if (pixelM === undefined || !this.framed) return;
    this.features.clear(true);
    this.names.clear(true);
    if (!this.options.still) this.names.addFeatures(markFeatures(this.palette, pixelM));
    const route = this.options.route ? model.route : null;
    const spots = this.options.wind ? [] : this.options.route ? route?.stops ?? [] : model.spots, acting = this.options.route ? route?.next ?? "" : model.chosen;
    this.host.dataset["places"] = String(spots.length);
    this.features.addFeatures([
      ...passFeatures(this.palette, route, acting, this.options.still), ...spotFeatures(this.palette, pixelM, spots, acting, this.options.still), ...trackFeatures(this.palette), ...meFeatures(this.palette),
      ...(this.options.wind ? lookedFeatures(this.palette) : []),
    ]);
    this.soundings.clear(true);
    if (!this.options.still && !this.options.wind) this.soundings.addFeatures(soundingFeatures(this.palette, view.calculateExtent(), pixelM));
    this.bars();
    this.host.toggleAttribute("data-turned", Math.abs(view.getRotation()) > 0.02);
  }

  private bars(): void {
    const pixelM = this.map.getView().getResolution() ?? 1;
    let bar = model.metric ? this.options.metricBarM : this.options.feetBarM;
    while (bar / pixelM < 9) bar *= 2;
    this.host.style.setProperty("--seg", `${bar / pixelM}px`);
    const scale = this.host.querySelector<HTMLElement>(".scale");
    if (!scale) return;
    const [longM, name] = scaleBar(Math.min(140, (this.map.getSize()?.[0] ?? 300) / 3) * pixelM, model.metric);
    scale.style.width = `${longM / pixelM}px`;
    scale.textContent = name;
  }

  private paint(extent: Extent, resolution: number, ratio: number, size: [number, number]): HTMLCanvasElement {
    const pixelM = resolution / ratio, westM = extent[0]!, northM = extent[3]!, width = Math.round(size[0]), height = Math.round(size[1]);
    const window = { westM, northM, pixelM, width, height, ratio };
    if (this.options.wind && model.wind && model.frame && width > 0 && height > 0) return this.windFilm.frame(model, model.wind, this.palette, window);
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    const ctx = canvas.getContext("2d");
    if (!ctx || !model.frame || width < 1 || height < 1) return canvas;
    const image = ctx.createImageData(width, height);
    this.table ??= colourTable(this.palette, model.belt, model.maxDepthM);
    paintWater(image, model.field, model.frame, westM, northM, pixelM, this.table, ratio);
    ctx.putImageData(image, 0, 0);
    drawInk(ctx, model, this.palette, window);
    return canvas;
  }

  private tap(pixel: number[], at: number[]): void {
    const hit = this.map.forEachFeatureAtPixel(pixel, (f) => f.get("letter") as string | undefined, { hitTolerance: 8 });
    if (hit) { void this.listener?.invokeMethodAsync("OnSpot", hit); return; }
    if (!model.frame) return;
    const depthM = depthAt(model.field, model.frame, at[0]!, at[1]!);
    void this.listener?.invokeMethodAsync("OnTap", at[0], at[1], depthM > 0 ? depthM : -1);
  }
}
