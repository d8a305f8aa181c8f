// Tabs of one device tell each other what was kept, so that none goes on showing what another has changed.
export interface TabListener { invokeMethodAsync(name: "OnOtherTab", what: string, lake: string): Promise<unknown> }

const channel = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("second-shore");

/** Tells the other tabs what was kept, and of which lake: records, files, lakes, papers, stop, trip or units. */
export const tell = (what: string, lake: string): void => channel?.postMessage([what, lake]);

/** Tells the listener what other tabs kept. A tab in the background waits until it is looked at, and then hears each thing once. */
export function listenToTabs(listener: TabListener): void {
  const waiting = new Map<string, [string, string]>();
  const hear = (): void => {
    if (document.visibilityState !== "visible") return;
    const heard = [...waiting.values()];
    waiting.clear();
    for (const [what, lake] of heard) void listener.invokeMethodAsync("OnOtherTab", what, lake);
  };
  channel?.addEventListener("message", (event: MessageEvent<[string, string]>) => {
    waiting.set(event.data.join(" "), event.data);
    hear();
  });
  document.addEventListener("visibilitychange", hear);
}
