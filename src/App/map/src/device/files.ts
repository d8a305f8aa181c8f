// Files that the user drops or picks wait here until the engine has looked at them.
import { engine } from "../worker/client";
import { saveLake } from "../store/lakes";

interface HeldFile { path: string; bytes: Uint8Array }

let waiting: HeldFile[] = [];
let picks = 0;

/** Reads the files; false where others were picked meanwhile, which then are the ones that wait. */
async function hold(files: File[]): Promise<boolean> {
  const pick = ++picks, held: HeldFile[] = [];
  for (const file of files) held.push({ path: file.webkitRelativePath || file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  if (pick !== picks) return false;
  waiting = held;
  return true;
}

export interface FilesListener { invokeMethodAsync(name: "OnFiles"): Promise<unknown> }

/** Tells the listener of files chosen with an input or dropped on an element. */
export function takeFiles(input: HTMLInputElement, drop: HTMLElement, listener: FilesListener): void {
  const tell = async (files: File[]): Promise<void> => {
    if (files.length > 0 && await hold(files)) await listener.invokeMethodAsync("OnFiles");
  };
  input.addEventListener("change", () => {
    // The list is the input's own and empties with it: the files are taken out first, so that the same ones can be picked again at once.
    const files = [...(input.files ?? [])];
    input.value = "";
    void tell(files);
  });
  drop.addEventListener("dragover", (e) => { e.preventDefault(); drop.classList.add("over"); });
  drop.addEventListener("dragleave", () => drop.classList.remove("over"));
  drop.addEventListener("drop", (e) => { e.preventDefault(); drop.classList.remove("over"); void tell([...(e.dataTransfer?.files ?? [])]); });
}

/** Asks with the held files along. */
export const askWithFiles = (verb: string, json: string): Promise<string> =>
  engine.request(verb, json, { files: waiting }).then((answer) => answer.json);

/** The files that came with an answer. */
export const filesOf = (arrays: Record<string, Uint8Array>): { path: string; bytes: Blob }[] =>
  Object.entries(arrays).filter(([name]) => name.startsWith("file:"))
    .map(([name, bytes]) => ({ path: name.slice(5), bytes: new Blob([bytes as Uint8Array<ArrayBuffer>]) }));

/** Unpacks a trip file of the app's own and keeps it in the database. What the user picked meanwhile goes on waiting. */
export async function unpackOwn(url: string, id: string, addedAt: string): Promise<string> {
  const stops = engine.stops;
  const answer = await fetch(new URL(url, document.baseURI));
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  const own = [{ path: url.slice(url.lastIndexOf("/") + 1), bytes: new Uint8Array(await answer.arrayBuffer()) }];
  engine.unlessStopped(stops);
  return make("unpack", "{}", own, id, "", addedAt);
}

/** Has the engine make a lake folder of the held files and keeps it in the database. */
export async function createLake(verb: string, json: string, id: string, name: string, addedAt: string): Promise<string> {
  const files = waiting;
  const said = await make(verb, json, files, id, name, addedAt);
  // Others may have been picked while the engine worked.
  if (waiting === files) waiting = [];
  return said;
}

async function make(verb: string, json: string, files: HeldFile[], id: string, name: string, addedAt: string): Promise<string> {
  const answer = await engine.request(verb, json, { files });
  const made = filesOf(answer.arrays);
  if (made.length === 0) return answer.json;
  const said = (JSON.parse(answer.json) as { name?: string }).name;
  await saveLake({ id, name: name || said || id, addedAt }, made);
  return answer.json;
}

/** Has the engine make a file and hands it to the user. */
export async function download(verb: string, json: string, fileName: string, lake: string): Promise<string> {
  const answer = await engine.request(verb, json, { lake });
  for (const file of filesOf(answer.arrays)) handOut(file.bytes, fileName || file.path);
  return answer.json;
}

/** Hands a file to the user as the browser does it. */
export function handOut(bytes: Blob, fileName: string): void {
  const url = URL.createObjectURL(bytes), link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 30_000);
}
