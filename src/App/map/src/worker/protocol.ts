import type { FileRow } from "../store/database";

/** What the page asks of the engine's worker, and what comes back. */
export interface EngineRequest {
  id: number;
  verb: string;
  json: string;
  /** The lake whose stored files are read first; only with the verb "open". */
  lake?: string | undefined;
  files?: { path: string; bytes: Uint8Array }[] | undefined;
  /** The lake's files where the browser keeps none, so that the worker cannot read them itself. */
  held?: FileRow[] | undefined;
}

export type EngineAnswer =
  | { type: "ready" }
  | { type: "broken"; message: string }
  | { type: "progress"; id: number; share: number; what: string }
  | { type: "answer"; id: number; json: string; arrays: Record<string, Uint8Array>; tookMs: number }
  | { type: "failed"; id: number; message: string };

/** The methods that the engine's assembly exports. */
export interface EngineExports {
  Begin(): void;
  AddFile(path: string, bytes: Uint8Array): void;
  Ask(verb: string, json: string): string;
  /** Asks the open weather service for the open lake's weather. */
  AskWeather(json: string): Promise<string>;
}
