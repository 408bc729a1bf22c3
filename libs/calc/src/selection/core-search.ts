import { CoreHistory } from './core-history.js';
import { ROUNDING, type CoreClass } from './core-order.js';

/** What stops a search that would take too long; counts repeat exactly, `expired` reads a clock. */
export interface SearchLimits {
  readonly mostStates: number;
  readonly mostWork: number;
  readonly expired: () => boolean;
}

/** Best change of the break choice. */
export interface CoreAnswer {
  /** Profit above the break choice; the one handed in when nothing better exists. */
  readonly profit: number;
  /** Items that replace those of the break choice, or null when nothing better was found. */
  readonly items: readonly number[] | null;
  /** Nothing better exists. */
  readonly proved: boolean;
  readonly states: number;
}

/** Changes kept so far, weight and profit both strictly rising. */
interface States {
  count: number;
  weight: Float64Array;
  profit: Float64Array;
  node: Int32Array;
}

const room = (size: number): States => ({ count: 0, weight: new Float64Array(size), profit: new Float64Array(size), node: new Int32Array(size) });

function larger(states: States): States {
  const grown = room(states.weight.length * 2);
  grown.weight.set(states.weight);
  grown.profit.set(states.profit);
  grown.node.set(states.node);
  return grown;
}

/** The search while it runs: two buffers of states, the best so far. */
class CoreSearch {
  private now = room(1024);
  private next = room(1024);
  private readonly history = new CoreHistory();
  private bestNode = -1;
  private better = false;
  private work = 0;

  constructor(
    private readonly slack: number,
    private best: number,
  ) {
    this.now.count = 1;
    this.now.node[0] = -1;
  }

  /** Puts one class into the core: every state with every item, dominated and hopeless ones left out. */
  add(core: CoreClass): void {
    const { now, slack } = this;
    const ways = core.item.length + 1;
    let next = this.next;
    const cursor = new Int32Array(ways);
    // Way 0 keeps the item of the break choice.
    const dw = new Float64Array(ways);
    const dp = new Float64Array(ways);
    dw.set(core.weight, 1);
    dp.set(core.profit, 1);
    // Weight at the head of each way, so the smallest is found without touching the states.
    const head = new Float64Array(ways);
    for (let k = 0; k < ways; k++) head[k] = now.weight[0]! + dw[k]!;
    this.work += now.count * ways;
    let kept = 0;
    let last = -Infinity;
    for (;;) {
      let way = -1;
      let w = Infinity;
      for (let k = 0; k < ways; k++) if (head[k]! < w) w = head[(way = k)]!;
      if (way < 0) break;
      const from = cursor[way]!;
      const p = now.profit[from]! + dp[way]!;
      cursor[way] = from + 1;
      head[way] = from + 1 < now.count ? now.weight[from + 1]! + dw[way]! : Infinity;
      if (p <= last) continue;
      const gradient = w <= slack ? core.restUp : core.restDown;
      const alive = gradient === Infinity ? false : p + (slack - w) * gradient >= this.best + 1 - ROUNDING;
      const record = w <= slack && p > this.best;
      if (!alive && !record) continue;
      const node = way === 0 ? now.node[from]! : this.history.add(now.node[from]!, core.item[way - 1]!);
      if (record) {
        this.best = p;
        this.bestNode = node;
        this.better = true;
      }
      // An equally heavy, less worthy state gives way.
      if (kept > 0 && next.weight[kept - 1] === w) kept--;
      if (kept === next.weight.length) next = larger(next);
      next.weight[kept] = w;
      next.profit[kept] = p;
      next.node[kept++] = node;
      last = p;
    }
    next.count = kept;
    this.now = next;
    this.next = now;
    this.clear();
  }

  private clear(): void {
    const living = new Int32Array(this.now.count + 1);
    living.set(this.now.node.subarray(0, this.now.count));
    living[this.now.count] = this.bestNode;
    this.history.clear(living);
    this.now.node.set(living.subarray(0, this.now.count));
    this.bestNode = living[this.now.count]!;
  }

  get states(): number {
    return this.now.count;
  }

  get done(): number {
    return this.work;
  }

  answer(proved: boolean): CoreAnswer {
    return { profit: this.best, items: this.better ? this.history.itemsOf(this.bestNode) : null, proved, states: this.work };
  }
}

/**
 * Expanding core: dynamic programming over changes of the break choice, class by class in the order of the core, until no
 * state can beat the best.
 *
 *   a state stays while  profit + (slack − weight) × gradient of the classes to come ≥ best + 1
 *
 * @param core classes in order, see coreOrder
 * @param from slack = capacity − weight of the break choice; found = profit above it that is already in hand
 * @param limits what stops the search early
 * @returns the best change and whether it is proved
 * @throws never
 * @source Pisinger, DIKU report 95/1, sections 7.6–7.7
 */
export function searchCore(core: readonly CoreClass[], from: { readonly slack: number; readonly found: number }, limits: SearchLimits): CoreAnswer {
  const search = new CoreSearch(from.slack, from.found);
  for (const each of core) {
    search.add(each);
    if (search.states === 0) return search.answer(true);
    if (search.states > limits.mostStates || search.done > limits.mostWork || limits.expired()) return search.answer(false);
  }
  return search.answer(true);
}
