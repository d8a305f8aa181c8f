// Colours come from the style sheet's tokens, so that a theme is changed in one place.
export interface Palette {
  paper: string; ink: string; halo: string; sheet: string; accent: string; belt: string; onAccent: string;
  contour: string; contourOpacity: number; sound: string; washes: readonly string[]; theme: string;
}

export function readPalette(from: Element): Palette {
  const style = getComputedStyle(from);
  // A style sheet that is packed writes #ffffff as #fff; here an opacity may be put behind it.
  const get = (name: string): string => style.getPropertyValue(name).trim().replace(/^#([\da-f])([\da-f])([\da-f])$/i, "#$1$1$2$2$3$3");
  return {
    paper: get("--paper"), ink: get("--ink"), halo: get("--halo"), sheet: get("--sheet"), accent: get("--accent"),
    belt: get("--belt"), onAccent: get("--on-accent"), contour: get("--contour"), contourOpacity: Number(get("--contour-o")) || 0.46,
    sound: get("--sound"), washes: Array.from({ length: 10 }, (_, i) => get(`--d${i}`)), theme: get("--paper") + get("--belt"),
  };
}

/** A colour as red, green, blue from 0 to 255; the tokens are written as #rrggbb. */
export function rgb(colour: string): [number, number, number] {
  const n = parseInt(colour.slice(1, 7), 16);
  return [(n >> 16) & 255, (n >> 8) & 255, n & 255];
}

export const washStepsM = [0, 10, 20, 30, 40, 55, 75, 100, 130, 160].map((ft) => ft * 0.3048);
