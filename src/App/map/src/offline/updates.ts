// Registers the service worker and tells the page about a newer version; the user decides when to take it.
export interface UpdateListener { invokeMethodAsync(name: "OnUpdateReady" | "OnSignal", value?: boolean): Promise<unknown> }

let registration: ServiceWorkerRegistration | undefined;
let taken = false;

export async function keepOffline(listener: UpdateListener): Promise<void> {
  const signal = (): void => void listener.invokeMethodAsync("OnSignal", navigator.onLine);
  addEventListener("online", signal);
  addEventListener("offline", signal);
  signal();
  if (!("serviceWorker" in navigator)) return;
  try {
    registration = await navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" });
  } catch {
    // Private windows and plain http refuse it: the app works, only not without a signal.
  }
  // A browser told to block service workers answers with nothing at all.
  if (!registration) return;
  const offer = (): void => {
    if (registration?.waiting && navigator.serviceWorker.controller) void listener.invokeMethodAsync("OnUpdateReady");
  };
  offer();
  registration.addEventListener("updatefound", () => {
    registration?.installing?.addEventListener("statechange", offer);
  });
  navigator.serviceWorker.controller?.postMessage("opened");
  // Another tab may take the newer version: this one goes on as it is, with what is being written in it, until its user says so.
  let controlled = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (taken) location.reload();
    else if (controlled) void listener.invokeMethodAsync("OnUpdateReady");
    controlled = true;
  });
}

export function takeUpdate(): void {
  taken = true;
  if (registration?.waiting) registration.waiting.postMessage("take-over");
  else location.reload();
}
