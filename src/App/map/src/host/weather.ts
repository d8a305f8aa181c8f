// Weather for the open lake: packed by the host, or asked of the open service by the engine itself.
import { saveFiles } from "../store/lakes";
import { filesOf } from "../device/files";
import { engine, type ProgressListener } from "../worker/client";
import { hostUrl } from "./calls";

/** Weather through the host, put among the lake's files. Rejects with "away", "status NNN", or the host's own sentence. */
export async function weatherFromHost(path: string, json: string, lake: string): Promise<string> {
  const { url, headers } = await hostUrl(path);
  let answer: Response;
  try {
    answer = await fetch(url, { headers, cache: "no-store", credentials: "same-origin" });
  } catch {
    throw new Error("away");
  }
  if (!answer.ok) throw new Error(await answer.json().then((told: { detail?: string }) => told.detail, () => undefined) ?? `status ${answer.status}`);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  return keep(lake, engine.request("weather", json, { lake, files: [{ path: "weather.zip", bytes }] }));
}

/** Weather asked of the service by this device. */
export const weatherDirect = (json: string, lake: string, listener: ProgressListener | null): Promise<string> =>
  keep(lake, engine.request("askweather", json, { lake, listener }));

/** Has the engine change files of the open lake, and keeps them. */
export const changeFiles = (verb: string, json: string, lake: string): Promise<string> => keep(lake, engine.request(verb, json, { lake }));

async function keep(lake: string, asked: Promise<{ json: string; arrays: Record<string, Uint8Array> }>): Promise<string> {
  const answer = await asked;
  await saveFiles(lake, filesOf(answer.arrays));
  return answer.json;
}
