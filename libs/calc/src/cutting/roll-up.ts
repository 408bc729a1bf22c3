import type { Block } from './block.js';
import { SAME_ticks, type ReadyJob } from './ready-job.js';

/** A physical roll with the blocks cut from it, from its free end on. */
export interface RolledUp {
  readonly offer: number;
  readonly blocks: readonly Block[];
  /** Sum of the blocks' lengths, kerf included. */
  readonly running: number;
}

/**
 * Puts blocks into whole rolls so that few rolls are opened: longest first into the fullest roll that still takes it.
 * Film sold by length has one running stretch for each offer.
 */
export function rollUp(ready: ReadyJob, blocks: readonly Block[]): RolledUp[] {
  const rolls: { offer: number; blocks: Block[]; running: number }[] = [];
  const sorted = [...blocks].sort((a, b) => a.offer - b.offer || b.length - a.length);
  for (const block of sorted) {
    const limit = ready.offers[block.offer]!.length + SAME_ticks;
    let into: { offer: number; blocks: Block[]; running: number } | null = null;
    for (let r = rolls.length - 1; r >= 0 && rolls[r]!.offer === block.offer; r--) {
      const roll = rolls[r]!;
      if (roll.running + block.length <= limit && (into === null || roll.running > into.running)) into = roll;
    }
    if (into === null) {
      into = { offer: block.offer, blocks: [], running: 0 };
      rolls.push(into);
    }
    into.blocks.push(block);
    into.running += block.length;
  }
  return rolls;
}
