// Symbols as small drawings, never scaled with the map. They are painted here and now: paper is printed before any image could load.
import Icon, { type Options } from "ol/style/Icon.js";
import type { Palette } from "./palette";

/** Pixels of a drawing for each of the screen's: sharp on a phone and on paper. */
const fine = 3;

interface Stroke { d: string; filled?: boolean; width?: number; dash?: number[] }
const drawings: Record<string, Stroke[]> = {
  ramp: [{ d: "M7 19 9 5h6l2 14z", filled: true }, { d: "M8.4 9.5h7.2M7.8 14h8.4" }],
  brush: [{ d: "M12 19V6M12 19C10 12 7 9 4.5 8M12 19c2-7 5-10 7.5-11M12 19c-3-3-6-4-8-3.5M12 19c3-3 6-4 8-3.5" }],
  stumps: [{ d: "M4 18h16M7 18v-5h3v5M14 18v-7h3v7" }],
  timber: [{ d: "M3 19h18M7 19V8M7 13l-2.5-3M12 19V5M12 11l3-3M17 19V9M17 14l2.5-3" }],
  rock: [{ d: "M4 18l3-7 4-2 2 3 3-1 4 7z", filled: true }],
  weed: [{ d: "M7 20c-2-5 2-7 0-13M12 20c-2-6 2-9 0-15M17 20c-2-5 2-7 0-13" }],
  works: [{ d: "M4 17h16M4 13h16M7 13v4M12 13v4M17 13v4" }],
  hazard: [{ d: "M3 12a9 9 0 1 0 18 0a9 9 0 1 0 -18 0", dash: [2.5, 2.5] }, { d: "M8.5 8.5l7 7M15.5 8.5l-7 7", width: 2.6 }],
  hump: [{ d: "M2 12a10 7 0 1 0 20 0a10 7 0 1 0 -20 0M6.5 12a5.5 3.6 0 1 0 11 0a5.5 3.6 0 1 0 -11 0" }],
  ledge: [{ d: "M3 9h18M6 9v7M10 9v4M14 9v7M18 9v4" }],
  other: [{ d: "M12 5v14M5 12h14" }],
};

const made = new Map<string, HTMLCanvasElement>();

// What was drawn before its lettering came is drawn again, not kept.
function drawing(key: string, size: number, draw: (ctx: CanvasRenderingContext2D) => void): HTMLCanvasElement {
  const known = made.get(key);
  if (known) return known;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = size * fine;
  const ctx = canvas.getContext("2d");
  if (ctx) {
    ctx.scale(fine, fine);
    ctx.lineCap = ctx.lineJoin = "round";
    draw(ctx);
    if (document.fonts.status === "loaded") made.set(key, canvas);
  }
  return canvas;
}

const icon = (img: HTMLCanvasElement, more: Options): Icon => new Icon({ img, scale: 1 / fine, ...more });

/** What a mark is, 24 px wide, in the palette's ink. */
export function symbolIcon(kind: string, palette: Palette): Icon {
  const image = drawing(`mark ${kind} ${palette.theme}`, 24, (ctx) => {
    for (const stroke of drawings[kind] ?? drawings["other"]!) {
      const path = new Path2D(stroke.d);
      ctx.strokeStyle = palette.ink;
      ctx.fillStyle = palette.sheet;
      ctx.lineWidth = stroke.width ?? 1.7;
      ctx.setLineDash(stroke.dash ?? []);
      if (stroke.filled) ctx.fill(path);
      ctx.stroke(path);
    }
  });
  return icon(image, { declutterMode: "obstacle" });
}

/** A letter in a circle, held off its place by a leader. The place is the image's centre. */
export function letterIcon(letter: string, next: boolean, palette: Palette, dx: number, dy: number): Icon {
  const image = drawing(`letter ${letter} ${next} ${dx},${dy} ${palette.theme}`, 96, (ctx) => {
    ctx.translate(48, 48);
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = 1.8;
    ctx.stroke(new Path2D(`M0 0L${dx} ${dy}`));
    disc(ctx, 0, 0, 3, palette.ink);
    disc(ctx, dx, dy, 13.5, next ? palette.accent : palette.sheet);
    ctx.lineWidth = 1.6;
    ctx.stroke();
    ctx.fillStyle = next ? palette.onAccent : palette.ink;
    ctx.font = '700 15px Besley,Rockwell,"Roboto Slab",Georgia,serif';
    ctx.textAlign = "center";
    ctx.fillText(letter, dx, dy + 5.2);
  });
  return icon(image, { declutterMode: "none" });
}

/** The boat, with a wedge ahead where its heading is known. */
export function boatIcon(palette: Palette, headingDeg: number | null): Icon {
  const image = drawing(`boat ${headingDeg !== null} ${palette.theme}`, 48, (ctx) => {
    ctx.translate(24, 24);
    ctx.fillStyle = palette.ink;
    if (headingDeg !== null) ctx.fill(new Path2D("M0 -21L7 -10A12 12 0 0 0 -7 -10Z"));
    disc(ctx, 0, 0, 9.5, `${palette.halo}CC`);
    ctx.strokeStyle = palette.ink;
    ctx.lineWidth = 2.2;
    ctx.stroke();
    disc(ctx, 0, 0, 4, palette.ink);
  });
  return icon(image, { rotation: ((headingDeg ?? 0) * Math.PI) / 180, rotateWithView: true, declutterMode: "none" });
}

/** The head of a pass, pointing along it. */
export function arrowIcon(palette: Palette, rotation: number): Icon {
  const image = drawing(`arrow ${palette.theme}`, 18, (ctx) => {
    ctx.translate(9, 9);
    ctx.fillStyle = palette.ink;
    ctx.fill(new Path2D("M0 -8L5.5 7L0 3.5L-5.5 7Z"));
  });
  return icon(image, { rotation, rotateWithView: true, declutterMode: "none" });
}

function disc(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number, fill: string): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = fill;
  ctx.fill();
}
