// Bytes of a shared lake's files, between the device's database and the host. They never pass through the page's .NET.
import { database, type FileRow } from "../store/database";
import { lakeFiles, saveFiles } from "../store/lakes";
import { hostUrl } from "./calls";

// A piece is small enough to be sent again over a poor line, and the host keeps what came of it.
const pieceBytes = 4 << 20;

async function sha256(bytes: Blob): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await bytes.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Changes a file's row, unless its bytes were replaced since it was read. */
async function mark(row: FileRow, more: Partial<FileRow>): Promise<void> {
  const work = (await database()).transaction("files", "readwrite");
  const now = await work.store.get([row.lake, row.path]);
  if (now && now.savedAt === row.savedAt && now.bytes.size === row.bytes.size) void work.store.put({ ...now, ...more });
  await work.done;
}

/** A lake's files with their hashes; worked out once for each version of a file. */
export async function hashedFiles(lake: string): Promise<string> {
  const list = [];
  for (const row of await lakeFiles(lake)) {
    const hash = row.sha256 ?? (await sha256(row.bytes));
    if (!row.sha256) await mark(row, { sha256: hash });
    list.push({ path: row.path, sha256: hash, sizeBytes: row.bytes.size, savedAt: row.savedAt ?? 0, base: row.base ?? null, was: row.was ?? null });
  }
  return JSON.stringify(list);
}

/** Says which record names a file's bytes at the host. */
export async function basedFile(lake: string, path: string, hash: string, base: string): Promise<void> {
  const row = await (await database()).get("files", [lake, path]);
  if (row?.sha256 === hash) await mark(row, { base });
}

const stored = (answer: Response): Promise<{ stored: number; complete: number }> => answer.json() as Promise<{ stored: number; complete: number }>;

/** Sends a file from where an earlier try stopped; gives the status of the last answer, 200 when the host has all of it. */
export async function sendFile(lake: string, at: string, path: string, hash: string): Promise<number> {
  const row = await (await database()).get("files", [lake, path]);
  if (!row || row.sha256 !== hash) return 409;
  const { url, headers } = await hostUrl(`api/lakes/${at}/files/${hash}`);
  try {
    const status = await fetch(new URL(`${url.href}/status`), { headers, cache: "no-store", credentials: "same-origin" });
    if (!status.ok) return status.status;
    let { stored: from, complete } = await stored(status);
    while (complete === 0) {
      const piece = row.bytes.slice(from, from + pieceBytes);
      const answer = await fetch(`${url.href}?size=${row.bytes.size}&from=${from}`, { method: "PUT", headers, body: piece, credentials: "same-origin" });
      // 409 tells how far the host really is: another tab or an earlier try sent more.
      if (!answer.ok && answer.status !== 409) return answer.status;
      const told = await stored(answer);
      if (told.stored <= from && told.complete === 0) return 409;
      ({ stored: from, complete } = told);
    }
    return 200;
  } catch {
    return 0;
  }
}

/** Fetches a file, checks its hash, and keeps it in the place of the one that is there; gives the status, 422 for damaged bytes. */
export async function fetchFile(lake: string, at: string, path: string, hash: string, base: string): Promise<number> {
  const { url, headers } = await hostUrl(`api/lakes/${at}/files/${hash}`);
  let bytes: Blob;
  try {
    const answer = await fetch(url, { headers, cache: "no-store", credentials: "same-origin" });
    if (!answer.ok) return answer.status;
    bytes = await answer.blob();
  } catch {
    return 0;
  }
  if ((await sha256(bytes)) !== hash) return 422;
  await saveFiles(lake, [{ path, bytes: new Blob([bytes]), sha256: hash, base }]);
  return 200;
}
