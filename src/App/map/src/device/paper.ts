// The printed sheet comes as a page of its own; here it is shown inside the app, where its styles touch nothing else.

/** Width of the sheet on the screen, with its margins, in pixels. */
const sheetWidth = 758;
/** Height of the smaller of A4 and Letter inside the sheet's margins, in pixels of print. */
const pageHeight = 980;

/**
 * Puts the sheet's one page into a shadow tree of the host. Nothing in it runs: only its style and its body are taken.
 * A day with many stops is set smaller, so that it stays on one page.
 */
export async function show(host: HTMLElement, html: string): Promise<void> {
  const page = new DOMParser().parseFromString(html, "text/html");
  const sheet = page.querySelector("main"), style = document.createElement("style");
  if (!sheet) return;
  // What the sheet says of its page's body belongs to the host here.
  style.textContent = (page.querySelector("style")?.textContent ?? "").replace(/\bbody\b(?=\{)/g, ":host");
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" }), body = document.importNode(sheet, true);
  root.replaceChildren(style, body);
  // On a screen narrower than the paper the whole sheet is shown smaller; it is zoomed into like a photograph.
  new ResizeObserver(([frame]) => host.style.setProperty("--fit", Math.min(1, (frame?.contentRect.width ?? sheetWidth) / sheetWidth).toFixed(3))).observe(host.parentElement ?? host);
  await document.fonts.ready;
  const share = Math.min(1, pageHeight / Math.max(1, body.offsetHeight));
  style.textContent += `@media print{.sheet{zoom:${share.toFixed(3)}}}`;
}
