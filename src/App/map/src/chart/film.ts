// One moment of the wind after the other on the same canvas: what does not move from frame to frame is drawn once.
import { drawInk, type Window } from "./ink";
import type { LakeModel } from "./model";
import type { Palette } from "./palette";
import { drawWindInk, type WindModel, WindPaint } from "./wind";

export class WindFilm {
  private readonly canvas = document.createElement("canvas");
  private readonly still = document.createElement("canvas");
  private readonly water = new WindPaint();
  private image: ImageData | undefined;
  private drawn = "";
  private shoreline: LakeModel["shoreline"] = null;

  /** Draws the model's hour; the canvas is the same each time. */
  frame(model: LakeModel, wind: WindModel, palette: Palette, w: Window): HTMLCanvasElement {
    const canvas = this.canvas, ctx = canvas.getContext("2d");
    if (canvas.width !== w.width || canvas.height !== w.height || !this.image) {
      [canvas.width, canvas.height] = [w.width, w.height];
      this.image = new ImageData(w.width, w.height);
      this.drawn = "";
    }
    if (!ctx) return canvas;
    const key = `${palette.theme} ${w.westM} ${w.northM} ${w.pixelM} ${w.ratio}`;
    if (key !== this.drawn || this.shoreline !== model.shoreline) {
      // Where the window stands still every pixel of water is painted over, and land stays clear.
      this.image.data.fill(0);
      [this.still.width, this.still.height] = [w.width, w.height];
      const ink = this.still.getContext("2d");
      if (ink) drawInk(ink, { ...model, contours: null, secondShore: null }, palette, w);
      [this.drawn, this.shoreline] = [key, model.shoreline];
    }
    this.water.paint(this.image, model, wind, palette, w.westM, w.northM, w.pixelM);
    ctx.putImageData(this.image, 0, 0);
    ctx.drawImage(this.still, 0, 0);
    drawWindInk(ctx, model, wind, palette, w);
    return canvas;
  }
}
