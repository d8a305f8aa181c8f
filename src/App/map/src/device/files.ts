// Files that the user drops or picks wait here until the engine has looked at them.
import { engine } from "../worker/client";
import { saveLake } from "../store/lakes";

let waiting: { path: string; bytes: Uint8Array }[] = [];

async function hold(files: Iterable<File>): Promise<string> {
  waiting = [];
  for (const file of files) waiting.push({ path: file.webkitRelativePath || file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
  return JSON.stringify(waiting.map((f) => ({ path: f.path, bytes: f.bytes.length })));
}

export interface FilesListener { invokeMethodAsync(name: "OnFiles", json: string): Promise<unknown> }

/** Tells the listener of files chosen with an input or dropped on an element. */
export function takeFiles(input: HTMLInputElement, drop: HTMLElement, listener: FilesListener): void {
  const tell = async (files: FileList | null | undefined): Promise<void> => {
    if (files && files.length > 0) await listener.invokeMethodAsync("OnFiles", await hold(files));
  };
  input.addEventListener("change", () => void tell(input.files).then(() => { input.value = ""; }));
  drop.addEventListener("dragover", (e) => { e.preventDefault(); drop.classList.add("over"); });
  drop.addEventListener("dragleave", () => drop.classList.remove("over"));
  drop.addEventListener("drop", (e) => { e.preventDefault(); drop.classList.remove("over"); void tell(e.dataTransfer?.files); });
}

/** Asks with the held files along. */
export const askWithFiles = (verb: string, json: string): Promise<string> =>
  engine.request(verb, json, { files: waiting }).then((answer) => answer.json);

/** The files that came with an answer. */
export const filesOf = (arrays: Record<string, Uint8Array>): { path: string; bytes: Blob }[] =>
  Object.entries(arrays).filter(([name]) => name.startsWith("file:"))
    .map(([name, bytes]) => ({ path: name.slice(5), bytes: new Blob([bytes as Uint8Array<ArrayBuffer>]) }));

/** Holds a file of the app's own, as if the user had picked it. */
export async function holdOwn(url: string): Promise<void> {
  const answer = await fetch(new URL(url, document.baseURI));
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  waiting = [{ path: url.slice(url.lastIndexOf("/") + 1), bytes: new Uint8Array(await answer.arrayBuffer()) }];
}

/** Has the engine make a lake folder and keeps it in the database. */
export async function createLake(verb: string, json: string, id: string, name: string, addedAt: string): Promise<string> {
  const answer = await engine.request(verb, json, { files: waiting });
  const files = filesOf(answer.arrays);
  if (files.length === 0) return answer.json;
  const said = (JSON.parse(answer.json) as { name?: string }).name;
  await saveLake({ id, name: name || said || id, addedAt }, files);
  waiting = [];
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
