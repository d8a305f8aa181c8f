import { database, explained, type AnswerRow, type RecordRow } from "./database";
import { tell } from "./tabs";

/** Readings and log entries of a lake. */
export async function records(lake: string): Promise<RecordRow[]> {
  return (await allRecords(lake)).filter((row) => row.kind !== "file");
}

/** Everything kept of a lake, versions of its files as well. */
export async function allRecords(lake: string): Promise<RecordRow[]> {
  return (await database()).getAllFromIndex("records", "byLake", lake);
}

/**
 * Adds records; resolves only once the database says that they are on disk, so that what is acknowledged is kept.
 * A record that is already there is left as it is: adding is a set union.
 */
export async function addRecords(rows: readonly RecordRow[]): Promise<number> {
  const work = (await database()).transaction("records", "readwrite", { durability: "strict" });
  try {
    const waits: Promise<unknown>[] = [];
    for (const row of rows) if ((await work.store.getKey([row.lake, row.id])) === undefined) waits.push(work.store.add(row));
    await Promise.all([...waits, work.done]);
    for (const lake of new Set(rows.map((row) => row.lake))) tell("records", lake);
    return waits.length;
  } catch (error) {
    throw explained(error);
  }
}

/** Puts the same records under other ids in their places, all at once. */
export async function exchangeRecords(old: readonly RecordRow[], now: readonly RecordRow[]): Promise<void> {
  const work = (await database()).transaction("records", "readwrite", { durability: "strict" });
  const waits: Promise<unknown>[] = old.map((row) => work.store.delete([row.lake, row.id]));
  for (const row of now) waits.push(work.store.put(row));
  await Promise.all([...waits, work.done]);
}

export async function setting(key: string): Promise<string | null> {
  return (await (await database()).get("settings", key)) ?? null;
}

export async function saveSetting(key: string, value: string): Promise<void> {
  await (await database()).put("settings", value, key);
  const [what, lake] = key.split(/:(.*)/s);
  if (key === "units" || what === "stop" || what === "trip") tell(what!, lake ?? "");
}

export async function removeSetting(key: string): Promise<void> {
  await (await database()).delete("settings", key);
}

export async function lastAnswer(lake: string, verb: string): Promise<AnswerRow | null> {
  return (await (await database()).get("answers", [lake, verb])) ?? null;
}

export async function keepAnswer(row: AnswerRow): Promise<void> {
  try {
    await (await database()).put("answers", row);
    if (row.verb === "papers") tell("papers", row.lake);
  } catch {
    // Only a copy of what can be worked out again: no room for it is no loss.
  }
}

export async function storageUse(): Promise<{ usedBytes: number; quotaBytes: number; persistent: boolean }> {
  const estimate = await navigator.storage?.estimate?.();
  return {
    usedBytes: estimate?.usage ?? 0,
    quotaBytes: estimate?.quota ?? 0,
    persistent: (await navigator.storage?.persisted?.()) ?? false,
  };
}

export async function askToPersist(): Promise<boolean> {
  return (await navigator.storage?.persist?.()) ?? false;
}
