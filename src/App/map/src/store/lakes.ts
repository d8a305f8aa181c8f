import { database, explained, type FileRow, type LakeRow } from "./database";
import { tell } from "./tabs";

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
    tell("lakes", "");
    if (old.length > 0) tell("files", lake.id);
  } catch (error) {
    throw explained(error);
  }
}

/** Writes a lake's name alone; its files are there already. */
export async function nameLake(id: string, name: string, addedAt: string): Promise<void> {
  await (await database()).put("lakes", { id, name, addedAt });
  tell("lakes", "");
}

/** Adds or replaces single files of a lake. */
export async function saveFiles(lake: string, files: readonly Pick<FileRow, "path" | "bytes" | "sha256" | "base">[]): Promise<void> {
  const work = (await database()).transaction("files", "readwrite", { durability: "strict" });
  try {
    const waits: Promise<unknown>[] = [];
    for (const file of files) {
      const old = await work.store.get([lake, file.path]);
      waits.push(work.store.put({ lake, savedAt: Date.now(), was: old?.base ?? old?.was, ...file }));
    }
    await Promise.all([...waits, work.done]);
    tell("files", lake);
  } catch (error) {
    throw explained(error);
  }
}

export async function removeLake(lake: string): Promise<void> {
  const stores = ["files", "records", "settled"] as const;
  const work = (await database()).transaction(["lakes", "answers", "links", ...stores], "readwrite", { durability: "strict" });
  const waits: Promise<unknown>[] = [work.objectStore("lakes").delete(lake), work.objectStore("links").delete(lake)];
  for (const name of stores) for (const key of await work.objectStore(name).index("byLake").getAllKeys(lake)) waits.push(work.objectStore(name).delete(key));
  waits.push(work.objectStore("answers").delete(IDBKeyRange.bound([lake], [lake, []])));
  await Promise.all([...waits, work.done]);
  tell("lakes", "");
}
