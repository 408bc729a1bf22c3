import type { Compiled } from './compiled.js';

/**
 * Multiple-choice knapsack: exactly one item of each class, total weight ≤ capacity, largest total profit.
 * Inside a class weight and profit both rise strictly; all else is dominated and gone.
 */
export interface Classes {
  readonly count: number;
  readonly start: Int32Array;
  readonly weight: Float64Array;
  readonly profit: Float64Array;
  /** Option of the compiled problem, −1 for taking none. */
  readonly option: Int32Array;
  readonly capacity: number;
}

/** Items of one class while they are sorted. */
interface Bench {
  readonly weight: number[];
  readonly profit: number[];
  readonly option: number[];
}

/** Sorts by weight, then profit downwards, then place (insertion sort: classes are small), and keeps what is not dominated. */
function keepUndominated(bench: Bench): number {
  const { weight, profit, option } = bench;
  for (let i = 1; i < weight.length; i++) {
    const w = weight[i]!;
    const p = profit[i]!;
    const o = option[i]!;
    let j = i - 1;
    while (j >= 0 && (weight[j]! > w || (weight[j]! === w && profit[j]! < p))) {
      weight[j + 1] = weight[j]!;
      profit[j + 1] = profit[j]!;
      option[j + 1] = option[j]!;
      j--;
    }
    weight[j + 1] = w;
    profit[j + 1] = p;
    option[j + 1] = o;
  }
  let kept = 0;
  for (let i = 0; i < weight.length; i++) {
    if (kept > 0 && profit[i]! <= profit[kept - 1]!) continue;
    weight[kept] = weight[i]!;
    profit[kept] = profit[i]!;
    option[kept++] = option[i]!;
  }
  return kept;
}

/**
 * Classes of the groups of one phase: none is (0, 0) and first, unless the group must be done.
 *
 * @param of the compiled problem
 * @param groups indices of groups
 * @param phase index of the phase
 * @returns classes in the order of groups, or the first group that must be done and has no option left
 * @throws never
 */
export function classesOf(of: Compiled, groups: ArrayLike<number>, phase: number): Classes | { readonly stuck: number } {
  let most = groups.length;
  for (let i = 0; i < groups.length; i++) most += of.optionStart[groups[i]! + 1]! - of.optionStart[groups[i]!]!;
  const start = new Int32Array(groups.length + 1);
  const weight = new Float64Array(most);
  const profit = new Float64Array(most);
  const option = new Int32Array(most);
  const { factor, cap } = of.phases[phase]!;
  const bench: Bench = { weight: [], profit: [], option: [] };
  let at = 0;
  for (let i = 0; i < groups.length; i++) {
    const g = groups[i]!;
    let size = of.must[g] === 1 ? 0 : 1;
    bench.weight.length = bench.profit.length = bench.option.length = size;
    if (size === 1) {
      bench.weight[0] = bench.profit[0] = 0;
      bench.option[0] = -1;
    }
    for (let o = of.optionStart[g]!; o < of.optionStart[g + 1]!; o++) {
      if ((of.allowed[o]! >> phase) % 2 === 0) continue;
      bench.weight[size] = of.cost[o]!;
      bench.profit[size] = of.value[o]! * factor;
      bench.option[size++] = o;
    }
    if (size === 0) return { stuck: g };
    const kept = keepUndominated(bench);
    for (let j = 0; j < kept; j++) {
      weight[at] = bench.weight[j]!;
      profit[at] = bench.profit[j]!;
      option[at++] = bench.option[j]!;
    }
    start[i + 1] = at;
  }
  return { count: groups.length, start, weight, profit, option, capacity: cap };
}
