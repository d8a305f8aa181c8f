// Charts draw themselves anew a moment after their size changed. Paper cannot wait for that: it is measured and printed at once.
const listeners = new Set<() => void>();

/** Called when everything must be drawn at its present size before anything else happens. */
export function onSizeNow(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function sizeNow(): void { for (const listener of [...listeners]) listener(); }
