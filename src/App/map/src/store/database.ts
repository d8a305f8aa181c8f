// The browser's own database: lakes as files, readings and log entries as records that are only ever added.
import { openDB, type DBSchema, type IDBPDatabase } from "idb";

export interface LakeRow { id: string; name: string; addedAt: string }
/** A file of a lake; savedAt tells a newer one from an older of the same size. */
export interface FileRow { lake: string; path: string; bytes: Blob; savedAt?: number }
/** A reading or log entry. Never changed: an edit is a new record that names the one it replaces. */
export interface RecordRow { id: string; lake: string; kind: string; at: string; replaces: string | null; removed: boolean; json: string }
/** The last answer to a question, so that a cold start shows it at once while the engine wakes. */
export interface AnswerRow { lake: string; verb: string; stamp: string; json: string; arrays: Record<string, Uint8Array> }

export interface Schema extends DBSchema {
  lakes: { key: string; value: LakeRow };
  files: { key: [string, string]; value: FileRow; indexes: { byLake: string } };
  records: { key: string; value: RecordRow; indexes: { byLake: string } };
  settings: { key: string; value: string };
  answers: { key: [string, string]; value: AnswerRow };
}

export const databaseName = "second-shore";
let opened: Promise<IDBPDatabase<Schema>> | undefined;

export function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>(databaseName, 1, {
    upgrade(db) {
      db.createObjectStore("lakes", { keyPath: "id" });
      db.createObjectStore("files", { keyPath: ["lake", "path"] }).createIndex("byLake", "lake");
      db.createObjectStore("records", { keyPath: "id" }).createIndex("byLake", "lake");
      db.createObjectStore("settings");
      db.createObjectStore("answers", { keyPath: ["lake", "verb"] });
    },
    // Another tab wants a newer form of the database: let it, and read again on next use.
    blocking() { void opened?.then((db) => db.close()); opened = undefined; },
    terminated() { opened = undefined; },
  });
  return opened;
}

/** Turns the browser's "no room" into one sentence that says what to do; everything else passes. */
export function explained(error: unknown): Error {
  const name = error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") return new Error("quota");
  if (name === "InvalidStateError" || name === "UnknownError") return new Error("database");
  return error instanceof Error ? error : new Error(String(error));
}
