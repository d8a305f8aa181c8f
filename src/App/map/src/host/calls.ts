// Calls to the host: with the token of this device where it has one. Nothing is called unless the user chose a host.
import { setting } from "../store/records";

/** Where the host is, "" for the place the app came from; the token it gave this device, "" where none is asked for. */
interface HostWay { address: string; token: string }

const patienceMs = 30_000;

export async function hostUrl(path: string): Promise<{ url: URL; headers: Record<string, string> }> {
  const way = JSON.parse((await setting("host")) ?? '{"address":"","token":""}') as HostWay;
  return { url: new URL(path, way.address || document.baseURI), headers: way.token ? { Authorization: `Bearer ${way.token}` } : {} };
}

/** One call; status 0 where nothing answers. A page in the place of JSON means that no host is there. */
export async function hostCall(method: string, path: string, json: string | null): Promise<string> {
  const { url, headers } = await hostUrl(path);
  return call(url, method, headers, json);
}

/** A call to an address that is not chosen yet. */
export const hostTry = (address: string, method: string, path: string, json: string | null): Promise<string> =>
  call(new URL(path, address || document.baseURI), method, {}, json);

async function call(url: URL, method: string, headers: Record<string, string>, json: string | null): Promise<string> {
  try {
    const answer = await fetch(url, {
      method,
      headers: json === null ? headers : { ...headers, "Content-Type": "application/json" },
      cache: "no-store",
      // A host on this machine knows its browser by a cookie of its own; no other place ever gets one.
      credentials: "same-origin",
      redirect: "error",
      signal: AbortSignal.timeout(patienceMs),
      ...(json === null ? {} : { body: json }),
    });
    const isJson = (answer.headers.get("Content-Type") ?? "").includes("json");
    return JSON.stringify({ status: answer.ok && !isJson && answer.status === 200 ? 404 : answer.status, body: isJson ? await answer.text() : "" });
  } catch {
    return JSON.stringify({ status: 0, body: "" });
  }
}
