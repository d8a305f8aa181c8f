import { database, explained, type FileRow, type LakeRow } from "./database";

export async function lakes(): Promise<LakeRow[]> {
  return (await database()).getAll("lakes");
}

export async function lakeFiles(lake: string): Promise<FileRow[]> {
  return (await database()).getAllFromIndex("files", "byLake", lake);
}

/** Writes a lake and its files in one transaction: all of it is there, or none. */
export async function saveLake(lake: LakeRow, files: readonly { path: string; bytes: Blob }[]): Promise<void> {
  const db = await database();
  const work = db.transaction(["lakes", "files", "answers"], "readwrite", { durability: "strict" });
  try {
    const old = await work.objectStore("files").index("byLake").getAllKeys(lake.id);
    const waits: Promise<unknown>[] = old.map((key) => work.objectStore("files").delete(key));
    for (const file of files) waits.push(work.objectStore("files").put({ lake: lake.id, savedAt: Date.now(), ...file }));
    waits.push(work.objectStore("lakes").put(lake));
    waits.push(work.objectStore("answers").delete(IDBKeyRange.bound([lake.id], [lake.id, []])));
    await Promise.all([...waits, work.done]);
  } catch (error) {
    throw explained(error);
  }
}

/** Adds or replaces single files of a lake. */
export async function saveFiles(lake: string, files: readonly { path: string; bytes: Blob }[]): Promise<void> {
  const work = (await database()).transaction("files", "readwrite", { durability: "strict" });
  try {
    await Promise.all([...files.map((file) => work.store.put({ lake, savedAt: Date.now(), ...file })), work.done]);
  } catch (error) {
    throw explained(error);
  }
}

export async function removeLake(lake: string): Promise<void> {
  const work = (await database()).transaction(["lakes", "files", "records", "answers"], "readwrite", { durability: "strict" });
  const waits: Promise<unknown>[] = [work.objectStore("lakes").delete(lake)];
  for (const key of await work.objectStore("files").index("byLake").getAllKeys(lake)) waits.push(work.objectStore("files").delete(key));
  for (const key of await work.objectStore("records").index("byLake").getAllKeys(lake)) waits.push(work.objectStore("records").delete(key));
  waits.push(work.objectStore("answers").delete(IDBKeyRange.bound([lake], [lake, []])));
  await Promise.all([...waits, work.done]);
}
