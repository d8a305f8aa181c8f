// A chart, the lake or a day's lesson as one picture: its words and drawings one under the other, under the lake's name and date.
import { escape, n } from "../charts/svg";
import { handOut } from "./files";

const margin = 32, width = 720, inner = width - 2 * margin;
/** What a drawing's looks are made of; a picture has no style sheet to ask. */
const looks = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray", "stroke-linejoin", "stroke-linecap", "opacity",
  "font-family", "font-size", "font-weight", "font-style", "text-anchor", "paint-order"] as const;

interface Flow { body: string; y: number }

/**
 * Hands out a picture of an element.
 * @param host The element: a chart, the lake's chart, or a section of words and charts.
 * @param head The lake and the date.
 * @param caption What is shown, in a sentence.
 * @param kind svg or png.
 */
export async function savePicture(host: HTMLElement, head: string, caption: string, name: string, kind: string): Promise<void> {
  const colour = (token: string): string => getComputedStyle(host).getPropertyValue(token).trim();
  const flow: Flow = { body: "", y: margin };
  words(flow, head, 26, "serif", 600, colour("--ink"));
  for (const part of parts(host)) {
    if (part instanceof SVGSVGElement) drawing(flow, part);
    else if (part.matches(".water")) chart(flow, part as HTMLElement, colour("--paper"), colour("--ink"));
    else said(flow, part as HTMLElement);
  }
  const told = caption || host.querySelector("svg[aria-label]")?.getAttribute("aria-label") || "";
  words(flow, told, 15, "sans", 400, colour("--ink-2"));
  const height = Math.ceil(flow.y + margin - 8);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`
    + `<title>${escape(head)}</title><desc>${escape(told)}</desc><style>${await faces()}</style><rect width="${width}" height="${height}" fill="${colour("--paper")}"/>${flow.body}</svg>`;
  const blob = new Blob([svg], { type: "image/svg+xml" });
  handOut(kind === "png" ? await drawn(blob, width, height) : blob, `${name}.${kind}`);
}

// Words and drawings in the order they are read; what is folded away or for the ear alone stays out.
function parts(host: HTMLElement): Element[] {
  const wanted = "h2,h3,p,li,th[scope=row],td span,svg.chart,.rates svg,.water";
  return [...(host.matches(wanted) ? [host] : host.querySelectorAll(wanted))].filter((part) => {
    if (part.closest(".vh,details:not([open]),.nopic,button") || !part.checkVisibility()) return false;
    return !(part instanceof HTMLElement && part.parentElement?.closest("p,li,.water") && host.contains(part.parentElement));
  });
}

function said(flow: Flow, part: HTMLElement): void {
  const style = getComputedStyle(part), text = part.innerText.replace(/\s+/g, " ").trim();
  if (!text) return;
  const heading = part.matches("h2,h3,.big");
  words(flow, text, Math.min(22, parseFloat(style.fontSize)), style.fontFamily.includes("Besley") ? "serif" : "sans", heading ? 600 : parseInt(style.fontWeight) || 400, style.color, part.matches("h2") ? 14 : 0);
}

let ruler: CanvasRenderingContext2D | null = null;
function words(flow: Flow, text: string, size: number, family: "serif" | "sans", weight: number, colour: string, before = 0): void {
  const font = family === "serif" ? 'Besley,"Roboto Slab",Georgia,serif' : 'Archivo,"Helvetica Neue",Arial,sans-serif';
  ruler ??= document.createElement("canvas").getContext("2d");
  if (ruler) ruler.font = `${weight} ${size}px ${font}`;
  flow.y += before;
  let line = "";
  const put = (): void => {
    flow.y += size * 1.3;
    flow.body += `<text x="${margin}" y="${n(flow.y - size * 0.3)}" font-family="${escape(font)}" font-size="${n(size)}" font-weight="${weight}" fill="${escape(colour)}">${escape(line)}</text>`;
  };
  for (const word of text.split(" ")) {
    const longer = line ? `${line} ${word}` : word;
    if (line && (ruler?.measureText(longer).width ?? longer.length * size * 0.5) > inner) { put(); line = word; } else line = longer;
  }
  if (line) put();
  flow.y += size * 0.3;
}

function drawing(flow: Flow, svg: SVGSVGElement): void {
  const box = svg.viewBox.baseVal, copy = svg.cloneNode(true) as SVGSVGElement;
  const from = svg.querySelectorAll<SVGElement>("*"), to = copy.querySelectorAll<SVGElement>("*");
  from.forEach((element, i) => {
    const style = getComputedStyle(element), own = to[i]!;
    for (const look of looks) own.style.setProperty(look, style.getPropertyValue(look));
    own.removeAttribute("class");
  });
  const scale = Math.min(inner / box.width, 1.6), w = box.width * scale, h = box.height * scale;
  copy.removeAttribute("class");
  copy.removeAttribute("style");
  for (const [name, value] of Object.entries({ x: n(margin), y: n(flow.y), width: n(w), height: n(h) })) copy.setAttribute(name, value);
  flow.body += new XMLSerializer().serializeToString(copy);
  flow.y += h + 12;
}

// The lake's chart is painted: what the screen shows of it becomes an image in the picture.
function chart(flow: Flow, water: HTMLElement, paper: string, ink: string): void {
  const ratio = Math.max(1, devicePixelRatio), image = document.createElement("canvas"), w = water.clientWidth, h = water.clientHeight;
  image.width = Math.round(w * ratio);
  image.height = Math.round(h * ratio);
  const ctx = image.getContext("2d");
  if (!ctx || w === 0 || h === 0) return;
  ctx.fillStyle = paper;
  ctx.fillRect(0, 0, image.width, image.height);
  for (const layer of water.querySelectorAll<HTMLCanvasElement>(".ol-layer canvas, canvas.ol-layer")) {
    if (layer.width === 0) continue;
    const matrix = /^matrix\(([^)]*)\)$/.exec(layer.style.transform)?.[1]?.split(",").map(Number)
      ?? [parseFloat(layer.style.width || String(w)) / layer.width, 0, 0, parseFloat(layer.style.height || String(h)) / layer.height, 0, 0];
    ctx.setTransform(...(matrix.map((v) => v * ratio) as [number, number, number, number, number, number]));
    ctx.drawImage(layer, 0, 0);
  }
  const shown = (h * inner) / w;
  flow.body += `<image x="${margin}" y="${n(flow.y)}" width="${inner}" height="${n(shown)}" xlink:href="${image.toDataURL("image/png")}"/>`
    + `<rect x="${margin}" y="${n(flow.y)}" width="${inner}" height="${n(shown)}" fill="none" stroke="${ink}" stroke-width="1.5"/>`;
  flow.y += shown + 12;
  bar(flow, water, inner / w, ink);
}

// The bar of the chart's scale, as long in the picture as its label says.
function bar(flow: Flow, water: HTMLElement, scale: number, ink: string): void {
  const scaleBar = water.parentElement?.querySelector<HTMLElement>(".scale");
  if (!scaleBar?.offsetWidth) return;
  const long = scaleBar.offsetWidth * scale;
  flow.body += `<path d="M${margin} ${n(flow.y)}v8h${n(long)}v-8" fill="none" stroke="${ink}" stroke-width="1.5"/>`
    + `<text x="${n(margin + long + 8)}" y="${n(flow.y + 9)}" font-family="Archivo,Arial,sans-serif" font-size="13" font-weight="600" fill="${ink}">${escape(scaleBar.innerText)}</text>`;
  flow.y += 22;
}

// The app's own type goes along: a picture may fetch nothing.
async function faces(): Promise<string> {
  const face = async (family: string, file: string): Promise<string> => {
    const bytes = new Uint8Array(await (await fetch(new URL(`fonts/${file}.woff2`, document.baseURI))).arrayBuffer());
    let text = "";
    for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
    return `@font-face{font-family:${family};src:url(data:font/woff2;base64,${btoa(text)}) format("woff2");font-weight:100 900}`;
  };
  return (await Promise.all([face("Besley", "besley"), face("Archivo", "archivo")]).catch(() => [""])).join("");
}

async function drawn(svg: Blob, w: number, h: number): Promise<Blob> {
  const image = new Image(), url = URL.createObjectURL(svg), canvas = document.createElement("canvas"), times = 2;
  image.src = url;
  await image.decode();
  canvas.width = w * times;
  canvas.height = h * times;
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(url);
  return new Promise((resolve, reject) => canvas.toBlob((png) => (png ? resolve(png) : reject(new Error("picture"))), "image/png"));
}
