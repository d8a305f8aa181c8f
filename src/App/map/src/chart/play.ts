// Plays the hours of the wind on the chart; the page is told when an hour is reached.
import { changed, model } from "./model";

export interface HourListener { invokeMethodAsync(name: "OnHour" | "OnPlayed", ...args: unknown[]): Promise<unknown> }

const hoursPerSecond = 3;
let frame = 0;

export function showHour(hour: number): void {
  model.windHour = hour;
  changed("wind");
}

export function stop(): void {
  cancelAnimationFrame(frame);
  frame = 0;
}

export function play(listener: HourListener): void {
  stop();
  const last = (model.wind?.hours ?? 1) - 1;
  if (model.windHour >= last) model.windHour = 0;
  let before = performance.now(), told = -1;
  const next = (now: number): void => {
    model.windHour = Math.min(last, model.windHour + (Math.min(100, now - before) / 1000) * hoursPerSecond);
    before = now;
    changed("wind");
    const hour = Math.round(model.windHour);
    if (hour !== told) { told = hour; void listener.invokeMethodAsync("OnHour", hour); }
    if (model.windHour >= last) { stop(); void listener.invokeMethodAsync("OnPlayed"); return; }
    frame = requestAnimationFrame(next);
  };
  frame = requestAnimationFrame(next);
}
