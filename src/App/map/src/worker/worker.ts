// The engine's own thread: a second .NET runtime that holds the open lake and answers questions about it.
// Big arrays go straight from here to the chart; the page's own runtime sees only small JSON.
import { lakeFiles } from "../store/lakes";
import { loadFor } from "./parts";
import { contoursFor, takeGrid, waterArrays } from "./grid";
import type { EngineAnswer, EngineExports, EngineRequest } from "./protocol";

interface DotnetRuntime {
  getAssemblyExports(name: string): Promise<{ SecondShore: { App: { Compute: { EngineWorker: EngineExports } } } }>;
  setModuleImports(name: string, imports: object): void;
  INTERNAL: { loadLazyAssembly(name: string): Promise<boolean> };
}
interface DotnetBuilder { create(): Promise<DotnetRuntime> }

const scope = self as unknown as DedicatedWorkerGlobalScope;
let arrays: Record<string, Uint8Array> = {};
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
    grid: (westM: number, southM: number, cellM: number, nx: number, ny: number, view: { slice(): Uint8Array }) =>
      { gridCame = true; takeGrid({ westM, southM, cellM, nx, ny }, new Float32Array(view.slice().buffer)); },
  });
  const exports = await runtime.getAssemblyExports("SecondShore.App");
  return { exports: exports.SecondShore.App.Compute.EngineWorker, load: (name) => runtime.INTERNAL.loadLazyAssembly(name) };
}

const engine = start();
engine.then(() => send({ type: "ready" }), (error: unknown) => send({ type: "broken", message: String(error) }));

async function answer(request: EngineRequest): Promise<void> {
  const { id, verb } = request;
  const began = performance.now();
  try {
    arrays = {};
    current = id;
    let json = "{}";
    if (verb === "contours") arrays = contoursFor(JSON.parse(request.json) as { metric: boolean });
    else {
      const { exports, load } = await engine;
      await loadFor(load, verb, (request.files ?? []).map((file) => file.path));
      gridCame = false;
      // A stopped engine starts empty: what is asked of a lake opens it first.
      if (verb !== "open" && request.lake && opened === "") { await open(exports, load, request); gridCame = false; }
      if (request.files) exports.Begin();
      for (const file of request.files ?? []) exports.AddFile(file.path, file.bytes);
      if (verb === "open") json = await open(exports, load, request);
      else json = verb === "askweather" ? await exports.AskWeather(request.json) : exports.Ask(verb, request.json);
      if (gridCame) Object.assign(arrays, waterArrays());
    }
    const out = arrays;
    arrays = {};
    send({ type: "answer", id, json, arrays: out, tookMs: performance.now() - began }, Object.values(out).map((a) => a.buffer));
  } catch (error) {
    send({ type: "failed", id, message: error instanceof Error ? error.message : String(error) });
  }
}

async function open(exports: EngineExports, load: (name: string) => Promise<boolean>, request: EngineRequest): Promise<string> {
  const files = request.held ?? await lakeFiles(request.lake ?? "");
  const mark = `${request.lake ?? ""} ${files.map((f) => `${f.path}:${f.savedAt ?? 0}:${f.bytes.size}`).join(" ")}`;
  if (mark === opened) return exports.Ask("reopen", request.json);
  opened = "";
  await loadFor(load, "open", files.map((file) => file.path), request.lake !== "demo");
  exports.Begin();
  for (const file of files) exports.AddFile(file.path, new Uint8Array(await file.bytes.arrayBuffer()));
  const json = exports.Ask("open", request.json);
  exports.Begin();
  opened = mark;
  return json;
}

// One question at a time, in the order asked.
let queue: Promise<void> = Promise.resolve();
scope.onmessage = (event: MessageEvent<EngineRequest>) => { queue = queue.then(() => answer(event.data)); };
