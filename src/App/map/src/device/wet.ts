// Rain and spray press keys: three touches at once lock them until a key is held for a second.
export interface WetListener { invokeMethodAsync(name: "OnWet"): Promise<unknown> }

export function guardWet(host: HTMLElement, listener: WetListener): void {
  host.addEventListener("touchstart", (event) => {
    if (event.touches.length >= 3) { event.preventDefault(); void listener.invokeMethodAsync("OnWet"); }
  }, { passive: false });
}
