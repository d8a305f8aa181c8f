// The engine's own thread: a second .NET runtime that holds the open lake and answers questions about it.
// Big arrays go straight from here to the chart; the page's own runtime sees only small JSON.
import { lakeFiles } from "../store/lakes";
import { loadFor } from "./parts";
import { contoursFor, takeGrid, waterArrays } from "./grid";
import type { Drawing } from "./desk";
import type { EngineAnswer, EngineExports, EngineQuestion, EngineRequest } from "./protocol";

interface DotnetRuntime {
  getAssemblyExports(name: string): Promise<{ SecondShore: { App: { Compute: { EngineWorker: EngineExports } } } }>;
  setModuleImports(name: string, imports: object): void;
  INTERNAL: { loadLazyAssembly(name: string): Promise<boolean> };
}
interface DotnetBuilder { create(): Promise<DotnetRuntime> }

const scope = self as unknown as DedicatedWorkerGlobalScope;
let arrays: Record<string, Uint8Array> = {};
let drawing: Drawing | null = null;
let current = 0;
/** The open lake's id and the marks of its files: the same files are not read and gridded twice. */
let opened = "";
let gridCame = false;

const send = (answer: EngineAnswer, transfer: Transferable[] = []): void => scope.postMessage(answer, transfer);

async function start(): Promise<{ exports: EngineExports; load(assembly: string): Promise<boolean> }> {
  // Tells the runtime that this worker is a runtime of its own, not a thread of another one.
  (globalThis as { dotnetSidecar?: boolean }).dotnetSidecar = true;
  const path = "../_framework/dotnet.js";
  const { dotnet } = (await import(path)) as { dotnet: DotnetBuilder };
  const runtime = await dotnet.create();
  runtime.setModuleImports("engine", {
    progress: (share: number, what: string) => send({ type: "progress", id: current, share, what }),
    // A memory view is only valid during the call: keep a copy.
    array: (name: string, view: { slice(): Uint8Array }) => { arrays[name] = view.slice(); },
    // Read here, off the page's thread, and nowhere else.
    draw: (json: string) => { drawing = JSON.parse(json) as Drawing; },
    grid: (westM: number, southM: number, cellM: number, nx: number, ny: number, view: { slice(): Uint8Array }) =>
      { gridCame = true; takeGrid({ westM, southM, cellM, nx, ny }, new Float32Array(view.slice().buffer)); },
  });
  const exports = await runtime.getAssemblyExports("SecondShore.App");
  return { exports: exports.SecondShore.App.Compute.EngineWorker, load: (name) => runtime.INTERNAL.loadLazyAssembly(name) };
}

const engine = start();
engine.then(() => send({ type: "ready" }), (error: unknown) => send({ type: "broken", message: String(error) }));

async function answer(request: EngineRequest): Promise<void> {
  if (request.type === "reader") { (await engine).exports.ReadBy(request.reader); return; }
  const { id } = request;
  const began = performance.now();
  try {
    [arrays, drawing, current] = [{}, null, id];
    let json = "{}";
    if (request.type === "contours") arrays = contoursFor(request.metric);
    else json = await ask(request);
    const out = arrays;
    arrays = {};
    send({ type: "answer", id, json, drawing, arrays: out, tookMs: performance.now() - began }, Object.values(out).map((a) => a.buffer));
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    // What is not a sentence for the user is for whoever looks into the console.
    if (!message.startsWith("said:")) console.error(error);
    send({ type: "failed", id, message });
  }
}

async function ask(request: EngineQuestion): Promise<string> {
  const { exports, load } = await engine;
  await loadFor(load, request.kind, (request.files ?? []).map((file) => file.path));
  if (request.kind === "open") return open(exports, load, request, request.question);
  // A stopped engine starts empty: what is asked of a lake opens it first.
  if (request.lake && request.opener && opened === "") {
    await open(exports, load, request, request.opener);
    [arrays, drawing] = [{}, null];
  }
  gridCame = false;
  exports.Begin();
  for (const file of request.files ?? []) exports.AddFile(file.path, file.bytes);
  const json = await exports.Ask(request.question);
  exports.Begin();
  if (gridCame) Object.assign(arrays, waterArrays());
  return json;
}

async function open(
  exports: EngineExports, load: (name: string) => Promise<boolean>, request: EngineQuestion, opener: string,
): Promise<string> {
  const lake = request.lake ?? "", files = request.held ?? await lakeFiles(lake);
  const mark = `${lake} ${files.map((f) => `${f.path}:${f.savedAt ?? 0}:${f.bytes.size}`).join(" ")}`;
  // The desk knows by content what became of a file; the mark only spares reading them out of the database again.
  if (mark !== opened) {
    opened = "";
    await loadFor(load, "open", files.map((file) => file.path), lake !== "demo");
    exports.Begin();
    for (const file of files) exports.AddFile(file.path, new Uint8Array(await file.bytes.arrayBuffer()));
    exports.Lay(lake);
  }
  gridCame = false;
  const json = await exports.Ask(opener);
  opened = mark;
  if (gridCame) Object.assign(arrays, waterArrays());
  return json;
}

// One question at a time, in the order asked.
let queue: Promise<void> = Promise.resolve();
scope.onmessage = (event: MessageEvent<EngineRequest>) => { queue = queue.then(() => answer(event.data), () => answer(event.data)); };
