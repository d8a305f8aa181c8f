// What the engine said of the demo lake when the app was built: shown until this device has worked it out itself.
import { take } from "../chart/listen";
import { keepAnswer } from "./records";

let first: Record<string, unknown> | undefined;

/** Fetches the first answers and hands their charts over; null when they are not there. */
export async function firstAnswers(url: string): Promise<string | null> {
  const answer = await fetch(new URL(url, document.baseURI));
  if (!answer.ok) return null;
  const text = await answer.text();
  first = JSON.parse(text) as Record<string, unknown>;
  for (const [verb, json] of Object.entries(first)) take(verb, JSON.stringify(json), {});
  return text;
}

/** Keeps the first answers as if this device had given them, so that a cold start before the engine is through shows them too. */
export async function keepFirst(lake: string, stamp: string): Promise<void> {
  for (const [verb, json] of Object.entries(first ?? {})) await keepAnswer({ lake, verb, stamp, json: JSON.stringify(json), arrays: {} });
}
