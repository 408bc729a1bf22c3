import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

const GROWS_BY_PERCENT = 10;
const AS_BEFORE = 0;

/** Collects now: the engine takes a new growth into account only when it has collected. */
function collect(): void {
  setFlagsFromString('--expose-gc');
  const gc: unknown = runInNewContext('typeof gc === "function" ? gc : undefined');
  if (typeof gc === 'function') (gc as () => void)();
}

/**
 * Does work that makes much garbage in a process that should stay small: until it ends, the engine collects once its heap has grown by a
 * tenth. Left alone it lets the heap of a large plan double first.
 */
export async function whileHeapStaysSmall<T>(work: () => Promise<T>): Promise<T> {
  setFlagsFromString(`--heap-growing-percent=${String(GROWS_BY_PERCENT)}`);
  collect();
  try {
    return await work();
  } finally {
    setFlagsFromString(`--heap-growing-percent=${String(AS_BEFORE)}`);
  }
}
