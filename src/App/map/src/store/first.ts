// What the engine said of the demo lake when the app was built: shown until this device has worked it out itself.
import { takeDrawing } from "../chart/listen";
import type { FirstAnswer } from "../worker/desk";
import { keepAnswer } from "./records";

let answers: FirstAnswer[] = [];

/** Fetches the first answers; false when they are not there. */
export async function fetchFirst(url: string): Promise<boolean> {
  const answer = await fetch(new URL(url, document.baseURI));
  if (answer.ok) answers = (await answer.json()) as FirstAnswer[];
  return answer.ok;
}

/** One of them, its drawing handed to the chart; null where there is none of that name. */
export function first(name: string): string | null {
  const answer = answers.find((a) => a.name === name);
  if (answer?.drawing) takeDrawing(answer.drawing, {});
  return answer?.json ?? null;
}

/** Keeps the first answers as if this device had given them, so that a cold start before the engine is through shows them too. */
export async function keepFirst(lake: string, stamp: string): Promise<void> {
  for (const { name, json, drawing } of answers) await keepAnswer({ lake, verb: name, stamp, json, drawing, arrays: {} });
}
