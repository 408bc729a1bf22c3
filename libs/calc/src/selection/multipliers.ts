import type { Compiled } from './compiled.js';
import type { SelectionMultipliers, SelectionProblem } from './problem.js';

/** Prices of all limits while they are worked out, by index of the compiled problem. */
export interface Multipliers {
  readonly cap: Float64Array;
  readonly minutes: Float64Array;
  readonly owner: Float64Array;
  readonly buildingCap: Float64Array;
  /** building × phases + phase */
  readonly minSpend: Float64Array;
  /** In the order of the compiled pairs. */
  readonly exclusive: Float64Array;
}

/** Prices of zero, a valid start of any search for better ones. */
export const noMultipliers = (of: Compiled): Multipliers => ({
  cap: new Float64Array(of.phases.length),
  minutes: new Float64Array(of.phases.length),
  owner: new Float64Array(of.owners.length),
  buildingCap: new Float64Array(of.buildings.length),
  minSpend: new Float64Array(of.buildings.length * of.phases.length),
  exclusive: new Float64Array(of.exclusive.length),
});

/** Prices as they are stored: by id, and only those that are not zero where ids name them. */
export function storedMultipliers(of: Compiled, m: Multipliers, problem: SelectionProblem): SelectionMultipliers {
  const named = (list: readonly { readonly id: string }[], price: Float64Array): Record<string, number> =>
    Object.fromEntries(list.flatMap(({ id }, i) => (price[i] === 0 ? [] : [[id, price[i]!]])));
  const phases = of.phases.length;
  const exclusive = new Array<number>(problem.exclusive?.length ?? 0).fill(0);
  of.exclusive.forEach((pair, e) => (exclusive[pair.at] = m.exclusive[e]!));
  return {
    cap: [...m.cap],
    crewMinutes: [...m.minutes],
    owners: named(of.owners, m.owner),
    buildingCap: named(of.buildings, m.buildingCap),
    minSpend: Object.fromEntries(
      of.buildings.flatMap(({ id }, b) => {
        const prices = [...m.minSpend.subarray(b * phases, (b + 1) * phases)];
        return prices.some((price) => price !== 0) ? [[id, prices]] : [];
      }),
    ),
    exclusive,
  };
}
