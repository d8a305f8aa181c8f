// The printed sheet comes as a page of its own; here it is shown inside the app, where its styles touch nothing else.

/** Puts the sheet's one page into a shadow tree of the host. Nothing in it runs: only its style and its body are taken. */
export function show(host: HTMLElement, html: string): void {
  const page = new DOMParser().parseFromString(html, "text/html");
  const sheet = page.querySelector("main"), style = document.createElement("style");
  // What the sheet says of its page's body belongs to the host here.
  style.textContent = (page.querySelector("style")?.textContent ?? "").replace(/\bbody\b(?=\{)/g, ":host");
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  root.replaceChildren(style, ...(sheet ? [document.importNode(sheet, true)] : []));
}
