// The browser's own database: lakes as files, readings and log entries as records that are only ever added.
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { Drawing, RecordRow } from "../worker/desk";

export interface LakeRow { id: string; name: string; addedAt: string }
/**
 * A file of a lake; savedAt tells a newer one from an older of the same size. Where the lake is in step with a host: base is the
 * record that names these bytes there, was the record of the bytes they took the place of; without base they wait for the host.
 */
export interface FileRow { lake: string; path: string; bytes: Blob; savedAt?: number; sha256?: string; base?: string; was?: string | undefined }
/** A reading or log entry. Never changed: an edit is a new record that names the one it replaces. */
export type { RecordRow };
/** The last answer of a name: a cold start shows it at once while the engine wakes. Without a drawing it is an earlier version's. */
export interface AnswerRow {
  lake: string; verb: string; stamp: string; json: string; drawing?: Drawing | null; arrays: Record<string, Uint8Array>;
}
/** A lake kept in step with the host: by what id it goes there, and how far this device is with it. */
export interface LinkRow { lake: string; at: string; name: string; mayWrite: boolean; epoch: string; cursor: number }
/** A record that the host has, or does not take. */
export interface SettledRow { lake: string; id: string; refused: boolean }

export interface Schema extends DBSchema {
  lakes: { key: string; value: LakeRow };
  files: { key: [string, string]; value: FileRow; indexes: { byLake: string } };
  records: { key: [string, string]; value: RecordRow; indexes: { byLake: string } };
  settings: { key: string; value: string };
  answers: { key: [string, string]; value: AnswerRow };
  links: { key: string; value: LinkRow };
  settled: { key: [string, string]; value: SettledRow; indexes: { byLake: string } };
}

export const databaseName = "second-shore";
let opened: Promise<IDBPDatabase<Schema>> | undefined;
let inMemory = false;

/** Whether the browser refuses to keep anything: all is held in memory and gone with the page. */
export const keepsNothing = (): boolean => inMemory;

export async function database(): Promise<IDBPDatabase<Schema>> {
  try {
    return await (opened ??= open().catch(afterRefusal));
  } catch (error) {
    opened = undefined;
    throw explained(error);
  }
}

/**
 * Private windows, full disks and settings make browsers refuse their database. The app goes on without keeping and says so; a database
 * of a newer version of the app is another matter, and nothing that was kept may then seem to be gone.
 */
async function afterRefusal(error: unknown): Promise<IDBPDatabase<Schema>> {
  if (error instanceof DOMException && (error.name === "VersionError" || error.name === "QuotaExceededError")) throw error;
  await import("fake-indexeddb/auto");
  inMemory = true;
  return open();
}

async function open(): Promise<IDBPDatabase<Schema>> {
  return openDB<Schema>(databaseName, 2, {
    async upgrade(db, from, _, work) {
      if (from < 1) {
        db.createObjectStore("lakes", { keyPath: "id" });
        db.createObjectStore("files", { keyPath: ["lake", "path"] }).createIndex("byLake", "lake");
        db.createObjectStore("settings");
        db.createObjectStore("answers", { keyPath: ["lake", "verb"] });
      }
      // The first form knew a record by its id alone; the same lake may now be on a device twice.
      const kept = from === 1 ? await work.objectStore("records").getAll() : [];
      if (from === 1) db.deleteObjectStore("records");
      const records = db.createObjectStore("records", { keyPath: ["lake", "id"] });
      records.createIndex("byLake", "lake");
      for (const row of kept) void records.add(row);
      db.createObjectStore("links", { keyPath: "lake" });
      db.createObjectStore("settled", { keyPath: ["lake", "id"] }).createIndex("byLake", "lake");
    },
    // Another tab wants a newer form of the database: let it, and read again on next use.
    blocking() { void opened?.then((db) => db.close()); opened = undefined; },
    terminated() { opened = undefined; },
  });
}

/** Turns the browser's "no room" into one sentence that says what to do; everything else passes. */
export function explained(error: unknown): Error {
  const name = error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") return new Error("quota");
  if (name === "VersionError") return new Error("newer");
  // A browser's own words of its database tell nobody what to do.
  if (name !== "" && name !== "AbortError") return new Error("database");
  return error instanceof Error ? error : new Error(String(error));
}
