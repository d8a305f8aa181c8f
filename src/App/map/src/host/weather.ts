// Weather for the open lake: packed by the host, or asked of the open service by the engine itself.
import { saveFiles } from "../store/lakes";
import { filesOf } from "../device/files";
import { engine, type ProgressListener } from "../worker/client";
import type { QuestionKind } from "../worker/desk";
import { hostUrl } from "./calls";

/** Weather through the host, put among the lake's files. Rejects with "away", or "host NNN" and the host's own sentence where it gave one. */
export async function weatherFromHost(
  path: string, kind: QuestionKind, question: string, lake: string, opener: string | null,
): Promise<string> {
  const { url, headers } = await hostUrl(path);
  let answer: Response;
  try {
    answer = await fetch(url, { headers, cache: "no-store", credentials: "same-origin" });
  } catch {
    throw new Error("away");
  }
  if (!answer.ok) throw new Error(`host ${answer.status} ${await answer.json().then((told: { detail?: string }) => told.detail ?? "", () => "")}`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  return keep(lake, engine.request(kind, question, { lake, opener, files: [{ path: "weather.zip", bytes }] }));
}

/** Has the engine change files of the open lake, and keeps them. */
export const changeFiles = (
  kind: QuestionKind, question: string, lake: string, opener: string | null, listener: ProgressListener | null,
): Promise<string> =>
  keep(lake, engine.request(kind, question, { lake, opener, listener }));

async function keep(lake: string, asked: Promise<{ json: string; arrays: Record<string, Uint8Array> }>): Promise<string> {
  const answer = await asked;
  await saveFiles(lake, filesOf(answer.arrays));
  return answer.json;
}
