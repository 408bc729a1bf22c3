import { exchangeMoves, type Moves } from './exchange-moves.js';
import type { PlanState } from './plan-state.js';
import type { PricedItems } from './priced-items.js';

/** Moves kept in a round, and pairs made of them. */
const MOST_MOVES = 900;
const MOST_PAIRS = 120_000;
/** Cells along each phase of the grid that pairs are found by. */
const CELLS = 40;
/** Pairs of pairs compared in one round. */
const MOST_LOOKS = 3e6;

/** Pairs of moves (or one move with nothing), with their sums. */
interface Pairs {
  readonly count: number;
  readonly a: Int32Array;
  /** −1 for a single move. */
  readonly b: Int32Array;
  readonly gain: Float64Array;
  readonly cost: Float64Array;
}

function pairsOf(moves: Moves, T: number, mostLoss: number): Pairs {
  const pairs = { a: new Int32Array(MOST_PAIRS), b: new Int32Array(MOST_PAIRS), gain: new Float64Array(MOST_PAIRS), cost: new Float64Array(MOST_PAIRS * T) };
  let count = 0;
  const add = (i: number, k: number): void => {
    pairs.a[count] = i;
    pairs.b[count] = k;
    pairs.gain[count] = moves.gain[i]! + (k < 0 ? 0 : moves.gain[k]!);
    for (let t = 0; t < T; t++) pairs.cost[count * T + t] = moves.cost[i * T + t]! + (k < 0 ? 0 : moves.cost[k * T + t]!);
    count++;
  };
  for (let i = 0; i < moves.count && count < MOST_PAIRS; i++) add(i, -1);
  // By the sum of places: pairs of two small losses come first.
  for (let sum = 1; sum < 2 * moves.count && count < MOST_PAIRS; sum++) {
    for (let i = Math.max(0, sum - moves.count + 1); 2 * i < sum && count < MOST_PAIRS; i++) {
      const k = sum - i;
      if (moves.group[i] !== moves.group[k] && moves.loss[i]! + moves.loss[k]! < mostLoss) add(i, k);
    }
  }
  return { count, ...pairs };
}

/** Finds two pairs of moves whose joint use just fits what the limits have left: up to four groups changed at once. */
export class Exchange {
  /** Pairs compared in all rounds. */
  spent = 0;
  private readonly phases: number;
  /** Phases the grid runs along: at most three. */
  private readonly axes: readonly number[];
  private readonly head: Int32Array;

  constructor(
    private readonly state: PlanState,
    private readonly priced: PricedItems,
    private readonly even: () => number,
  ) {
    this.phases = priced.model.of.phases.length;
    const used = new Set(priced.model.phase);
    this.axes = [...used].sort((a, b) => priced.price[b]! * priced.model.of.phases[b]!.cap - priced.price[a]! * priced.model.of.phases[a]!.cap || a - b).slice(0, 3);
    this.head = new Int32Array(CELLS ** this.axes.length);
  }

  /**
   * One round: the best exchange found is made.
   *
   * @param worth worth of the plan
   * @returns worth afterwards
   */
  round(worth: number): number {
    const moves = exchangeMoves(this.state, this.priced, { most: MOST_MOVES, even: this.even });
    const slack = this.priced.slackWorth(this.state);
    const pairs = pairsOf(moves, this.phases, 2 * slack);
    if (pairs.count === 0) return worth;
    for (const [p, q] of this.matches(pairs, moves)) {
      const ways = [pairs.a[p]!, pairs.b[p]!, ...(q < 0 ? [] : [pairs.a[q]!, pairs.b[q]!])].filter((k) => k >= 0);
      const now = this.tryMoves(moves, ways, worth);
      if (now > worth) return now;
    }
    return worth;
  }

  /** Spread of the pairs' use along an axis, cut to what matters: cells are equal shares of it. */
  private axisOf(pairs: Pairs, t: number): { low: number; width: number } {
    let sum = 0;
    for (let p = 0; p < pairs.count; p++) sum += Math.abs(pairs.cost[p * this.phases + t]!);
    const reach = Math.max(1, (3 * sum) / pairs.count);
    return { low: -reach, width: (2 * reach) / CELLS };
  }

  /** Pairs of pairs that gain and fit the caps, the best gains first (a few). */
  private matches(pairs: Pairs, moves: Moves): [number, number][] {
    const { axes, phases: T, head, state } = this;
    const scale = axes.map((t) => this.axisOf(pairs, t));
    const place = (t: number, x: number): number => Math.max(0, Math.min(CELLS - 1, Math.floor((x - scale[t]!.low) / scale[t]!.width)));
    const cellOf = (p: number): number => axes.reduce((cell, t, i) => cell * CELLS + place(i, pairs.cost[p * T + t]!), 0);
    head.fill(-1);
    const next = new Int32Array(pairs.count);
    for (let p = 0; p < pairs.count; p++) {
      const cell = cellOf(p);
      next[p] = head[cell]!;
      head[cell] = p;
    }
    const found: [number, number, number][] = [];
    let least = 0;
    const at = axes.map(() => 0);
    const stop = this.spent + MOST_LOOKS;
    for (let p = 0; p < pairs.count && this.spent < stop; p++) {
      axes.forEach((t, i) => (at[i] = place(i, state.capLeft[t]! - pairs.cost[p * T + t]!)));
      for (let corner = 0; corner < 1 << axes.length; corner++) {
        let cell = 0;
        for (let i = 0; i < axes.length; i++) cell = cell * CELLS + Math.max(0, at[i]! - ((corner >> i) & 1));
        for (let q = head[cell]!; q >= 0; q = next[q]!) {
          this.spent++;
          const gain = pairs.gain[p]! + pairs.gain[q]!;
          if (gain <= least || !this.fits(pairs, p, q) || !this.apart(pairs, moves, [p, q])) continue;
          found.push([p, q, gain]);
          if (found.length > 40) {
            found.sort((x, y) => y[2] - x[2]);
            found.length = 10;
            least = found[9]![2];
          }
        }
      }
    }
    return found.sort((x, y) => y[2] - x[2]).map(([p, q]) => [p, q]);
  }

  private fits(pairs: Pairs, p: number, q: number): boolean {
    for (let t = 0; t < this.phases; t++) if (pairs.cost[p * this.phases + t]! + pairs.cost[q * this.phases + t]! > this.state.capLeft[t]!) return false;
    return true;
  }

  /** No group twice. */
  private apart(pairs: Pairs, moves: Moves, [p, q]: readonly [number, number]): boolean {
    for (const x of [pairs.a[p]!, pairs.b[p]!]) for (const y of [pairs.a[q]!, pairs.b[q]!]) if (x >= 0 && y >= 0 && moves.group[x] === moves.group[y]) return false;
    return true;
  }

  /** Makes the moves if every limit and rule allows them and the plan is worth more; otherwise leaves it as it was. */
  private tryMoves(moves: Moves, ways: readonly number[], worth: number): number {
    const { state } = this;
    const before = ways.map((k) => state.item[moves.group[k]!]!);
    for (const k of ways) state.clear(moves.group[k]!);
    let fits = true;
    for (const k of ways) {
      const j = moves.item[k]!;
      if (j < 0) continue;
      if (!state.fits(j)) {
        fits = false;
        break;
      }
      state.put(j);
    }
    const now = fits && state.complete() ? state.total() : -Infinity;
    if (now > worth) return now;
    for (const k of ways) state.clear(moves.group[k]!);
    for (const j of before) if (j >= 0) state.put(j);
    return worth;
  }
}
