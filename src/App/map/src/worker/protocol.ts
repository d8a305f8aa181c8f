import type { FileRow } from "../store/database";
import type { Drawing, QuestionKind } from "./desk";

/** A question for the desk, as the page's runtime wrote it: nobody here reads it, the worker's runtime does. */
export interface EngineQuestion {
  type: "ask";
  id: number;
  kind: QuestionKind;
  question: string;
  /** The lake that is asked about; its stored files are laid on the desk first where they are not. */
  lake?: string | undefined;
  /** The question that opens that lake, for a worker that has it not open. */
  opener?: string | undefined;
  files?: { path: string; bytes: Uint8Array }[] | undefined;
  /** The lake's files where the browser keeps none, so that the worker cannot read them itself. */
  held?: FileRow[] | undefined;
}

/** What the worker is sent. */
export type EngineRequest =
  | EngineQuestion
  | { type: "contours"; id: number; metric: boolean }
  | { type: "reader"; reader: string };

/** An answer: its JSON is for the page's runtime, the drawing and the arrays are for the chart. */
export interface EngineReply { json: string; drawing: Drawing | null; arrays: Record<string, Uint8Array>; tookMs: number }

export type EngineAnswer =
  | { type: "ready" }
  | { type: "broken"; message: string }
  | { type: "progress"; id: number; share: number; what: string }
  | ({ type: "answer"; id: number } & EngineReply)
  | { type: "failed"; id: number; message: string };

/** The methods that the engine's assembly exports. */
export interface EngineExports {
  Begin(): void;
  AddFile(path: string, bytes: Uint8Array): void;
  Lay(lake: string): void;
  ReadBy(reader: string): void;
  Ask(question: string): Promise<string>;
}
