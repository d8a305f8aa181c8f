// Which lakes are kept in step with the host, and how far. Losing any of it costs a repetition and nothing else.
import { database, type LinkRow, type RecordRow } from "./database";

export async function links(): Promise<LinkRow[]> {
  return (await database()).getAll("links");
}

export async function saveLink(row: LinkRow): Promise<void> {
  await (await database()).put("links", row);
}

/** Ends all sharing: what is on the device stays, and nothing is known of any host. */
export async function forgetLinks(): Promise<void> {
  const db = await database();
  const work = db.transaction(["links", "settled", "files"], "readwrite");
  const waits: Promise<unknown>[] = [work.objectStore("links").clear(), work.objectStore("settled").clear()];
  for (const row of await work.objectStore("files").getAll()) {
    if (row.base === undefined && row.was === undefined) continue;
    const { base: _, was: __, ...bare } = row;
    waits.push(work.objectStore("files").put(bare));
  }
  await Promise.all([...waits, work.done]);
}

/** Records that the host neither has nor refused, so many at most. */
export async function waiting(lake: string, most: number): Promise<RecordRow[]> {
  const work = (await database()).transaction(["records", "settled"]);
  const settled = new Set((await work.objectStore("settled").index("byLake").getAllKeys(lake)).map((key) => key[1]));
  const keys = (await work.objectStore("records").index("byLake").getAllKeys(lake)).filter((key) => !settled.has(key[1]));
  const rows = await Promise.all(keys.slice(0, most).map((key) => work.objectStore("records").get(key)));
  return rows.filter((row) => row !== undefined);
}

/** How many records of each shared lake wait for the host. */
export async function waitingCounts(): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  const work = (await database()).transaction(["links", "records", "settled"]);
  for (const link of await work.objectStore("links").getAll()) {
    const settled = new Set((await work.objectStore("settled").index("byLake").getAllKeys(link.lake)).map((key) => key[1]));
    const records = await work.objectStore("records").index("byLake").getAllKeys(link.lake);
    counts[link.lake] = records.filter((key) => !settled.has(key[1])).length;
  }
  return counts;
}

/** Keeps how far this device is; rejects with "forgotten" once the lake is not shared any more, since nothing can be settled then. Another epoch than before: that host's store was made anew, and nothing is settled with it. */
export async function settle(lake: string, epoch: string, cursor: number, acknowledged: readonly string[], refused: readonly string[]): Promise<void> {
  const work = (await database()).transaction(["links", "settled"], "readwrite");
  const link = await work.objectStore("links").get(lake);
  if (!link) throw new Error("forgotten");
  const store = work.objectStore("settled");
  const waits: Promise<unknown>[] = [];
  if (link.epoch !== epoch) for (const key of await store.index("byLake").getAllKeys(lake)) waits.push(store.delete(key));
  for (const id of acknowledged) waits.push(store.put({ lake, id, refused: false }));
  for (const id of refused) waits.push(store.put({ lake, id, refused: true }));
  waits.push(work.objectStore("links").put({ ...link, epoch, cursor }));
  await Promise.all([...waits, work.done]);
}
