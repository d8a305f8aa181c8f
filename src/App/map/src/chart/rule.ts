// The depth rule at the chart's right edge: legend, belt and control in one.
import { model, onModel } from "./model";
import { washStepsM } from "./palette";

export interface RuleListener { invokeMethodAsync(name: "OnWhatIf", depthM: number): Promise<unknown> }

const svgNs = "http://www.w3.org/2000/svg";

/** Draws the rule into an element and lets its bracket be dragged (or moved by arrow keys) to ask "what if". */
export class DepthRule {
  private readonly svg: SVGSVGElement;
  private readonly off: () => void;
  private asking = false;
  private wanted: number | null = null;
  private dragFromM: number | null = null;

  constructor(private readonly host: HTMLElement, private readonly listener: RuleListener | null, say: string) {
    this.svg = document.createElementNS(svgNs, "svg");
    host.replaceChildren(this.svg);
    if (listener) {
      host.tabIndex = 0;
      host.setAttribute("role", "slider");
      host.setAttribute("aria-orientation", "vertical");
      host.addEventListener("pointerdown", (e) => this.grab(e));
      host.addEventListener("pointermove", (e) => this.drag(e));
      host.addEventListener("pointerup", () => { this.dragFromM = null; });
      host.addEventListener("keydown", (e) => this.key(e));
    } else host.setAttribute("role", "img");
    host.setAttribute("aria-label", say);
    this.off = onModel((part) => { if (part !== "position") this.draw(); });
    new ResizeObserver(() => this.draw()).observe(host);
    this.draw();
  }

  dispose(): void { this.off(); }

  private get deepestM(): number { return Math.max(15, model.maxDepthM); }
  private y(depthM: number): number { return 12 + Math.pow(Math.max(0, depthM) / this.deepestM, 0.62) * (this.host.clientHeight - 24); }
  private depthOf(y: number): number {
    return this.deepestM * Math.pow(Math.min(1, Math.max(0, (y - 12) / (this.host.clientHeight - 24))), 1 / 0.62);
  }

  private grab(event: PointerEvent): void {
    if (!model.belt) return;
    this.host.setPointerCapture(event.pointerId);
    this.dragFromM = this.depthOf(event.offsetY);
    this.move(this.dragFromM);
  }

  private drag(event: PointerEvent): void {
    if (this.dragFromM === null) return;
    this.move(this.depthOf(event.clientY - this.host.getBoundingClientRect().top));
  }

  private key(event: KeyboardEvent): void {
    if (!model.belt) return;
    const step = model.metric ? 0.25 : 0.3048;
    const by = event.key === "ArrowDown" ? step : event.key === "ArrowUp" ? -step : event.key === "PageDown" ? 5 * step : event.key === "PageUp" ? -5 * step : 0;
    if (by === 0) return;
    event.preventDefault();
    this.move(model.belt[3] + by);
  }

  /** Asks for another depth; while one question is on its way only the newest wish is kept. */
  private move(depthM: number): void {
    this.wanted = Math.min(this.deepestM, Math.max(0.5, depthM));
    if (this.asking || !this.listener) return;
    const listener = this.listener;
    this.asking = true;
    void (async () => {
      try {
        while (this.wanted !== null) {
          const next = this.wanted;
          this.wanted = null;
          await listener.invokeMethodAsync("OnWhatIf", next);
        }
      } finally { this.asking = false; }
    })();
  }

  private draw(): void {
    const h = this.host.clientHeight, w = this.host.clientWidth;
    if (h < 40 || model.maxDepthM <= 0) return;
    const unit = model.metric ? 1 : 0.3048, ticks = model.metric ? [0, 5, 10, 20, 30, 40, 60] : [0, 10, 20, 50, 100, 150, 200];
    let out = "";
    washStepsM.forEach((from, i) => {
      const to = Math.min(this.deepestM, washStepsM[i + 1] ?? Infinity);
      if (to > from) out += `<rect x="${w - 21}" y="${this.y(from)}" width="20" height="${this.y(to) - this.y(from)}" style="fill:var(--d${i})"/>`;
    });
    const belt = model.belt;
    let lastY = -99;
    for (const tick of ticks) {
      const y = this.y(tick * unit), busy = belt && Math.abs(y - this.y(belt[3])) < 16;
      if (tick * unit > this.deepestM || y - lastY < 20) continue;
      out += `<path class="ax" d="M${w - 26} ${y}h5"/>`;
      if (!busy) out += `<text x="${w - 30}" y="${y + 4.5}" text-anchor="end" style="font-size:12.5px">${tick}</text>`;
      lastY = y;
    }
    if (belt) {
      const top = this.y(belt[0]), middle = this.y(belt[3]), bottom = this.y(belt[6]);
      const shown = belt[3] / unit, text = model.metric ? shown.toFixed(1) : (Math.round(shown * 2) / 2).toString();
      out += `<rect x="${w - 21}" y="${top}" width="20" height="${Math.max(1, bottom - top)}" style="fill:var(--accent);opacity:.45"/>`
        + `<rect x="${w - 27}" y="${middle - 2.2}" width="26" height="4.4" style="fill:var(--accent)"/>`
        + `<path class="ac" style="stroke-width:3${model.whatIf ? ";stroke-dasharray:4 3" : ""}" d="M${w - 27} ${top}h-6V${bottom}h6"/>`
        + `<text x="${w - 37}" y="${middle + 5}" text-anchor="end" style="font:650 15px/1 var(--serif)">${text}</text>`;
      this.host.setAttribute("aria-valuemin", "0");
      this.host.setAttribute("aria-valuemax", String(Math.round(this.deepestM / unit)));
      this.host.setAttribute("aria-valuenow", String(Math.round(shown)));
      this.host.setAttribute("aria-valuetext", `${text} ${model.metric ? "m" : "ft"}`);
    }
    this.svg.setAttribute("viewBox", `0 0 ${w} ${h}`);
    this.svg.setAttribute("width", String(w));
    this.svg.setAttribute("height", String(h));
    this.svg.innerHTML = out;
  }
}
