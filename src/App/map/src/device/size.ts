// Charts draw themselves anew a moment after their size changed. Paper cannot wait for that: it is measured and printed at once.
type Sized = (isLast: boolean) => void;
const listeners = new Set<Sized>();

/** Called when all must have the height that its present width gives; the last time, all must be drawn as well. */
export function onSizeNow(listener: Sized): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function sizeNow(isLast: boolean): void { for (const listener of [...listeners]) listener(isLast); }
