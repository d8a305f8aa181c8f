// Files that the user drops or picks wait here until the engine has looked at them.
import { engine } from "../worker/client";
import type { QuestionKind } from "../worker/desk";
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

/** Files that the engine made of others, until they are saved as a lake. */
let made: { of: HeldFile[]; files: { path: string; bytes: Blob }[] } = { of: [], files: [] };

/** Asks with the held files along. What the engine makes of them waits for its name. */
export const askWithFiles = (kind: QuestionKind, question: string): Promise<string> => make(kind, question, waiting);

/** The files that came with an answer. */
export const filesOf = (arrays: Record<string, Uint8Array>): { path: string; bytes: Blob }[] =>
  Object.entries(arrays).filter(([name]) => name.startsWith("file:"))
    .map(([name, bytes]) => ({ path: name.slice(5), bytes: new Blob([bytes as Uint8Array<ArrayBuffer>]) }));

/** Unpacks a trip file of the app's own. What the user picked meanwhile goes on waiting. */
export async function unpackOwn(kind: QuestionKind, question: string, url: string): Promise<string> {
  const stops = engine.stops;
  const answer = await fetch(new URL(url, document.baseURI));
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  const own = [{ path: url.slice(url.lastIndexOf("/") + 1), bytes: new Uint8Array(await answer.arrayBuffer()) }];
  engine.unlessStopped(stops);
  return make(kind, question, own);
}

/** Keeps what the engine made as a lake in the database. */
export async function saveMade(id: string, name: string, addedAt: string): Promise<void> {
  const { of, files } = made;
  made = { of: [], files: [] };
  await saveLake({ id, name: name || id, addedAt }, files);
  // Others may have been picked while the engine worked.
  if (waiting === of) waiting = [];
}

async function make(kind: QuestionKind, question: string, files: HeldFile[]): Promise<string> {
  const answer = await engine.request(kind, question, { files });
  made = { of: files, files: filesOf(answer.arrays) };
  return answer.json;
}

/** Has the engine make files and hands them to the user. */
export async function download(
  kind: QuestionKind, question: string, fileName: string, lake: string, opener: string | null,
): Promise<string> {
  const answer = await engine.request(kind, question, { lake, opener });
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
