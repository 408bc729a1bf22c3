import type { Block } from './block.js';
import type { ReadyJob } from './ready-job.js';

/** A job with those of its types only that have pieces left. */
export interface PresentTypes {
  readonly part: ReadyJob;
  /** Pieces left by type of the part. */
  readonly counts: Int32Array;
  /** A block of the part in the whole job's numbers. */
  readonly back: (block: Block) => Block;
}

/** Leaves types out that have no piece left, so that laying a few pieces of a large job takes the time of a small one. */
export function presentTypes(ready: ReadyJob, pieces: Int32Array): PresentTypes {
  const types = [...ready.types.keys()].filter((t) => pieces[t]! > 0);
  if (types.length === ready.types.length) return { part: ready, counts: pieces, back: (block) => block };
  const at = new Int32Array(ready.types.length).fill(-1);
  types.forEach((t, i) => (at[t] = i));
  const lieOf: number[] = [];
  ready.lies.forEach((lie, k) => at[lie.type]! >= 0 && lieOf.push(k));
  const lies = lieOf.map((k) => ({ ...ready.lies[k]!, type: at[ready.lies[k]!.type]! }));
  return {
    part: { ...ready, types: types.map((t) => ready.types[t]!), lies },
    counts: Int32Array.from(types, (t) => pieces[t]!),
    back: (block) => ({ ...block, laid: block.laid.map((each) => ({ ...each, lie: lieOf[each.lie]! })) }),
  };
}
