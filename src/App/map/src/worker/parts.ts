import type { QuestionKind } from "./desk";

// Parts of the engine that a first visit can do without: fetched when a file or a question wants them.
// The service worker keeps them like everything else, so they are there without a signal.
const readers = ["BitMiracle.LibTiff.NET.wasm", "System.Private.Xml.wasm"];
/** Countries and coordinate systems, for survey files of the user's own. */
const atlas = ["SecondShore.Atlas.wasm"];
const writers = ["System.Private.Xml.wasm"];
const network = ["System.Net.Http.wasm", "Polly.Core.wasm"];

/** Files that are read without those parts. */
const plain = /\.(csv|json|geojson|asc|txt|md)$/i;

const loaded = new Map<string, Promise<unknown>>();

/** Loads what a question needs. */
export async function loadFor(load: (assembly: string) => Promise<unknown>, kind: QuestionKind, files: readonly string[], own = false): Promise<void> {
  const surveys = kind === "inspect" || kind === "adopt" || own ? atlas : [];
  const wanted = kind === "fetchWeather" ? network : kind === "papers" ? writers : files.every((name) => plain.test(name)) ? surveys : [...readers, ...surveys];
  await Promise.all(wanted.map((name) => {
    const before = loaded.get(name);
    if (before) return before;
    const now = load(name);
    loaded.set(name, now);
    // Without a signal it may fail now and succeed later.
    now.catch(() => loaded.delete(name));
    return now;
  }));
}
