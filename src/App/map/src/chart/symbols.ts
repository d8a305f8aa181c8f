// Symbols as small drawn icons: 24 px, never scaled with the map.
import type { Palette } from "./palette";

const size = 24;
const drawings: Record<string, string> = {
  ramp: '<path class="p" d="M7 19 9 5h6l2 14z"/><path class="k" d="M8.4 9.5h7.2M7.8 14h8.4"/>',
  brush: '<path class="k" d="M12 19V6M12 19C10 12 7 9 4.5 8M12 19c2-7 5-10 7.5-11M12 19c-3-3-6-4-8-3.5M12 19c3-3 6-4 8-3.5"/>',
  stumps: '<path class="k" d="M4 18h16M7 18v-5h3v5M14 18v-7h3v7"/>',
  timber: '<path class="k" d="M3 19h18M7 19V8M7 13l-2.5-3M12 19V5M12 11l3-3M17 19V9M17 14l2.5-3"/>',
  rock: '<path class="p" d="M4 18l3-7 4-2 2 3 3-1 4 7z"/>',
  weed: '<path class="k" d="M7 20c-2-5 2-7 0-13M12 20c-2-6 2-9 0-15M17 20c-2-5 2-7 0-13"/>',
  works: '<path class="k" d="M4 17h16M4 13h16M7 13v4M12 13v4M17 13v4"/>',
  hazard: '<circle class="k" cx="12" cy="12" r="9" stroke-dasharray="2.5 2.5"/><path class="k" stroke-width="2.6" d="M8.5 8.5l7 7M15.5 8.5l-7 7"/>',
  hump: '<ellipse class="k" cx="12" cy="12" rx="10" ry="7"/><ellipse class="k" cx="12" cy="12" rx="5.5" ry="3.6"/>',
  ledge: '<path class="k" d="M3 9h18M6 9v7M10 9v4M14 9v7M18 9v4"/>',
  other: '<path class="k" d="M12 5v14M5 12h14"/>',
};

const made = new Map<string, string>();

/** A symbol as an image address, drawn in the palette's ink. */
export function symbolUrl(kind: string, palette: Palette): string {
  const key = kind + palette.theme, known = made.get(key);
  if (known) return known;
  const body = (drawings[kind] ?? drawings["other"]!)
    .replace(/class="k"/g, `fill="none" stroke="${palette.ink}" stroke-width="1.7" stroke-linecap="round" stroke-linejoin="round"`)
    .replace(/class="p"/g, `fill="${palette.sheet}" stroke="${palette.ink}" stroke-width="1.7" stroke-linejoin="round"`);
  const url = `data:image/svg+xml,${encodeURIComponent(`<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 24 24">${body}</svg>`)}`;
  made.set(key, url);
  return url;
}

/** A letter in a circle, held off its place by a leader. The place is the image's centre. */
export function letterUrl(letter: string, next: boolean, palette: Palette, dx: number, dy: number): string {
  const key = `${letter}${next}${dx},${dy}${palette.theme}`, known = made.get(key);
  if (known) return known;
  const fill = next ? palette.accent : palette.sheet, ink = palette.ink, text = next ? palette.onAccent : ink;
  const url = `data:image/svg+xml,${encodeURIComponent(
    `<svg xmlns="http://www.w3.org/2000/svg" width="96" height="96" viewBox="-48 -48 96 96"><path d="M0 0L${dx} ${dy}" stroke="${ink}" stroke-width="1.8"/><circle r="3" fill="${ink}"/>`
    + `<circle cx="${dx}" cy="${dy}" r="13.5" fill="${fill}" stroke="${ink}" stroke-width="1.6"/>`
    + `<text x="${dx}" y="${dy + 5.2}" text-anchor="middle" font-family="Rockwell,Roboto Slab,Georgia,serif" font-weight="700" font-size="15" fill="${text}">${letter}</text></svg>`)}`;
  made.set(key, url);
  return url;
}

export function meUrl(palette: Palette, heading: boolean): string {
  const wedge = heading ? `<path d="M0 -21L7 -10A12 12 0 0 0 -7 -10Z" fill="${palette.ink}"/>` : "";
  return `data:image/svg+xml,${encodeURIComponent(`<svg xmlns="http://www.w3.org/2000/svg" width="48" height="48" viewBox="-24 -24 48 48">${wedge}<circle r="9.5" fill="${palette.halo}" fill-opacity=".8" stroke="${palette.ink}" stroke-width="2.2"/><circle r="4" fill="${palette.ink}"/></svg>`)}`;
}

export function arrowUrl(palette: Palette): string {
  return `data:image/svg+xml,${encodeURIComponent(`<svg xmlns="http://www.w3.org/2000/svg" width="18" height="18" viewBox="-9 -9 18 18"><path d="M0 -8L5.5 7L0 3.5L-5.5 7Z" fill="${palette.ink}"/></svg>`)}`;
}
