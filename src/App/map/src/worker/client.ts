// The page's side of the engine's worker.
import { takeContours, takeDrawing } from "../chart/listen";
import { keepsNothing } from "../store/database";
import { lakeFiles } from "../store/lakes";
import type { QuestionKind } from "./desk";
import type { EngineAnswer, EngineQuestion, EngineReply, EngineRequest } from "./protocol";

export interface ProgressListener { invokeMethodAsync(name: "OnProgress", share: number, what: string): Promise<unknown> }
interface Waiting {
  resolve(answer: EngineReply): void;
  reject(error: Error): void;
  listener: ProgressListener | null;
  kind: QuestionKind | "contours";
}
/** What goes with a question. */
export interface Beside {
  lake?: string | null;
  opener?: string | null;
  files?: EngineQuestion["files"];
  listener?: ProgressListener | null;
}

class EngineClient {
  private worker: Worker | undefined;
  private nextId = 1;
  private reader: string | undefined;
  private readonly waiting = new Map<number, Waiting>();
  /** The questions that lakes were opened with last: a worker that starts anew opens them by these. */
  private readonly openers = new Map<string, string>();

  /** How often work was stopped: what began before a stop must not go on after it. */
  stops = 0;

  /** Starts the worker so that it wakes while the page does. */
  start(): void {
    if (this.worker) return;
    this.worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module", name: "engine" });
    this.worker.onmessage = (event: MessageEvent<EngineAnswer>) => this.receive(event.data);
    this.worker.onerror = (event) => this.fail(event.message || "The engine's worker could not start.");
    if (this.reader !== undefined) this.send({ type: "reader", reader: this.reader });
  }

  /** Whose words the answers are in from now on. */
  readBy(reader: string): void {
    this.reader = reader;
    if (this.worker) this.send({ type: "reader", reader });
  }

  /** Asks; rejects with "stopped" when stopped. */
  async request(kind: QuestionKind, question: string, beside: Beside = {}): Promise<EngineReply> {
    const lake = beside.lake ?? undefined, stops = this.stops;
    this.start();
    if (lake && kind === "open") this.openers.set(lake, question);
    const opener = lake ? beside.opener ?? this.openers.get(lake) : undefined;
    const held = lake && keepsNothing() ? await lakeFiles(lake) : undefined;
    this.unlessStopped(stops);
    return this.ask(kind, (id) => ({ type: "ask", id, kind, question, lake, opener, files: beside.files, held }), beside.listener ?? null);
  }

  /** Has the contours of the water that is open traced. */
  async contours(metric: boolean): Promise<void> {
    this.start();
    await this.ask("contours", (id) => ({ type: "contours", id, metric }), null);
  }

  /** Ends all work at once. The engine is one thread, so stopping it means ending it; it starts anew with the next question. */
  stop(): void {
    this.stops++;
    this.worker?.terminate();
    this.worker = undefined;
    this.fail("stopped");
  }

  /** Throws "stopped" where work was stopped since. */
  unlessStopped(stops: number): void {
    if (stops !== this.stops) throw new Error("stopped");
  }

  private ask(kind: Waiting["kind"], request: (id: number) => EngineRequest, listener: ProgressListener | null): Promise<EngineReply> {
    const id = this.nextId++;
    return new Promise<EngineReply>((resolve, reject) => {
      this.waiting.set(id, { resolve, reject, listener, kind });
      this.send(request(id));
    });
  }

  private send(request: EngineRequest): void { this.worker?.postMessage(request); }

  private receive(answer: EngineAnswer): void {
    if (answer.type === "ready") { performance.mark("engine-ready"); return; }
    if (answer.type === "broken") { this.worker?.terminate(); this.worker = undefined; this.fail(answer.message); return; }
    const waiting = this.waiting.get(answer.id);
    if (!waiting) return;
    if (answer.type === "progress") { void waiting.listener?.invokeMethodAsync("OnProgress", answer.share, answer.what); return; }
    this.waiting.delete(answer.id);
    if (answer.type === "failed") { waiting.reject(new Error(answer.message)); return; }
    performance.measure(`engine:${waiting.kind}`, { start: performance.now() - answer.tookMs, duration: answer.tookMs });
    if (waiting.kind === "contours") takeContours(answer.arrays);
    else if (answer.drawing) takeDrawing(answer.drawing, answer.arrays);
    waiting.resolve(answer);
  }

  private fail(message: string): void {
    const all = [...this.waiting.values()];
    this.waiting.clear();
    for (const waiting of all) waiting.reject(new Error(message));
  }
}

export const engine = new EngineClient();
