// The phone in the boat: where it is, how fast, and a screen that stays awake.
export interface BoatListener {
  invokeMethodAsync(name: "OnFix", latDeg: number, lonDeg: number, accuracyM: number, speedMps: number | null, headingDeg: number | null, at: number): Promise<unknown>;
  invokeMethodAsync(name: "OnNoFix", why: string): Promise<unknown>;
}

let watch: number | undefined;
let lock: WakeLockSentinel | undefined;
let wantsAwake = false;

/** Starts following the position; the browser asks the user for consent. */
export function follow(listener: BoatListener): void {
  leave();
  if (!("geolocation" in navigator)) { void listener.invokeMethodAsync("OnNoFix", "none"); return; }
  watch = navigator.geolocation.watchPosition(
    (fix) => void listener.invokeMethodAsync("OnFix", fix.coords.latitude, fix.coords.longitude, fix.coords.accuracy, fix.coords.speed,
      fix.coords.heading === null || Number.isNaN(fix.coords.heading) ? null : fix.coords.heading, fix.timestamp),
    (error) => void listener.invokeMethodAsync("OnNoFix", error.code === error.PERMISSION_DENIED ? "denied" : "lost"),
    { enableHighAccuracy: true, maximumAge: 1000, timeout: 20000 },
  );
}

export function leave(): void {
  if (watch !== undefined) navigator.geolocation.clearWatch(watch);
  watch = undefined;
}

export async function stayAwake(wanted: boolean): Promise<void> {
  wantsAwake = wanted;
  try {
    if (!wanted) { await lock?.release(); lock = undefined; return; }
    lock = await navigator.wakeLock?.request("screen");
  } catch {
    // Refused on low battery or in the background: the screen's own timer then decides.
  }
}

document.addEventListener("visibilitychange", () => { if (wantsAwake && document.visibilityState === "visible") void stayAwake(true); });
