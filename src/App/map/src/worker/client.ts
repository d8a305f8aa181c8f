// The page's side of the engine's worker.
import { take } from "../chart/listen";
import { keepsNothing } from "../store/database";
import { lakeFiles } from "../store/lakes";
import type { EngineAnswer, EngineRequest } from "./protocol";

export interface ProgressListener { invokeMethodAsync(name: "OnProgress", share: number, what: string): Promise<unknown> }
export interface Answer { json: string; arrays: Record<string, Uint8Array>; tookMs: number }
interface Waiting { resolve(answer: Answer): void; reject(error: Error): void; listener: ProgressListener | null; verb: string }

class EngineClient {
  private worker: Worker | undefined;
  private nextId = 1;
  private readonly waiting = new Map<number, Waiting>();

  /** How often work was stopped: what began before a stop must not go on after it. */
  stops = 0;

  /** Starts the worker so that it wakes while the page does. */
  start(): void {
    if (this.worker) return;
    this.worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module", name: "engine" });
    this.worker.onmessage = (event: MessageEvent<EngineAnswer>) => this.receive(event.data);
    this.worker.onerror = (event) => this.fail(event.message || "The engine's worker could not start.");
  }

  /** Asks; rejects with "stopped" when stopped. */
  async request(verb: string, json: string, more: { lake?: string; files?: EngineRequest["files"]; listener?: ProgressListener | null }): Promise<Answer> {
    this.start();
    const stops = this.stops;
    const held = more.lake && keepsNothing() ? await lakeFiles(more.lake) : undefined;
    this.unlessStopped(stops);
    const id = this.nextId++;
    const request: EngineRequest = { id, verb, json, lake: more.lake, files: more.files, held };
    return new Promise<Answer>((resolve, reject) => {
      this.waiting.set(id, { resolve, reject, listener: more.listener ?? null, verb });
      this.worker?.postMessage(request);
    });
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

  private receive(answer: EngineAnswer): void {
    if (answer.type === "ready") { performance.mark("engine-ready"); return; }
    if (answer.type === "broken") { this.worker?.terminate(); this.worker = undefined; this.fail(answer.message); return; }
    const waiting = this.waiting.get(answer.id);
    if (!waiting) return;
    if (answer.type === "progress") { void waiting.listener?.invokeMethodAsync("OnProgress", answer.share, answer.what); return; }
    this.waiting.delete(answer.id);
    if (answer.type === "failed") { waiting.reject(new Error(answer.message)); return; }
    performance.measure(`engine:${waiting.verb}`, { start: performance.now() - answer.tookMs, duration: answer.tookMs });
    take(waiting.verb, answer.json, answer.arrays);
    waiting.resolve(answer);
  }

  private fail(message: string): void {
    const all = [...this.waiting.values()];
    this.waiting.clear();
    for (const waiting of all) waiting.reject(new Error(message));
  }
}

export const engine = new EngineClient();
