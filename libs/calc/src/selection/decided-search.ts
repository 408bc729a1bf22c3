import { ROUNDING } from './core-order.js';
import { decidedNode, halves } from './decided-node.js';
import { joinHalves } from './join-halves.js';
import type { Relaxation } from './relaxation.js';
import type { Restriction } from './restriction.js';

/** Combinations of a half that are stored at most: with six limits about 100 MB. */
const MOST_STORED = 1e6;

/** What joining combinations of a decided node has shown. */
export interface DecidedAnswer {
  /** A plan worth more than the best known: item of each group; null without one. */
  readonly plan: Int32Array | null;
  /** No plan of the node but this one is worth more; −∞ when none is. */
  readonly bound: number;
  /** Combinations walked through. */
  readonly heard: number;
  /** False where the node has too many combinations to join, or too many alike, or the clock ended it. */
  readonly whole: boolean;
}

/**
 * Looks for a better plan in a node in which only groups are undecided, as far below its bound as the count allows.
 *
 * @param relaxation of the part; left evaluated at the node's prices
 * @param node restriction and prices, see isDecided
 * @param how best worth known; most combinations of a half; how many to store and join of a wider room first; the clock
 * @returns the best plan met and the bound that remains
 */
export function searchDecided(
  relaxation: Relaxation,
  node: { readonly within: Restriction; readonly price: Float64Array },
  how: { readonly worth: number; readonly most: number; readonly probe: number; readonly expired: () => boolean },
): DecidedAnswer {
  relaxation.focus(node.within);
  const top = relaxation.evaluate(node.price);
  relaxation.measureSlack();
  // What a plan may lose and still be worth 1 more than the best.
  let whole = top - (how.worth + 1 - ROUNDING);
  const all = decidedNode(relaxation, node.within, { price: node.price, room: whole });
  let plan: Int32Array | null = null;
  let heard = 0;
  const join = (limit: Parameters<typeof halves>[1], which: 'all' | 'stored'): { room: number; found: boolean; ended: boolean } => {
    const { sides, room } = halves({ ...all, room: whole }, limit);
    if (room === 0) return { room, found: false, ended: true };
    const answer = joinHalves({ ...all, room }, sides, { expired: how.expired, mostWork: 12 * Math.max(how.most, how.probe), which });
    heard += answer.heard;
    if (answer.loss !== null) {
      plan = relaxation.chosen.slice();
      for (const [g, j] of answer.items) plan[g] = j;
      whole = answer.loss - 1 + ROUNDING;
    }
    return { room, found: answer.loss !== null, ended: !answer.whole };
  };
  if (how.probe > 0 && join({ most: Infinity, stored: how.probe }, 'stored').ended) return { plan, bound: top, heard, whole: false };
  const { room, found, ended } = join({ most: how.most, stored: MOST_STORED }, 'all');
  // The best within the room is the best of the node: what is better loses less.
  const closed = !ended && (found || room >= whole);
  return { plan, bound: closed ? -Infinity : ended ? top : top - room, heard, whole: !ended };
}
