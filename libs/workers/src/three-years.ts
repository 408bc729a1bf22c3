import type { SelectionGroup, SelectionProblem } from '#calc';

/** Even numbers 0 … 1, the same for the same seed. */
function evenNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export interface ThreeYears {
  readonly dwellings: number;
  /** Visits cost and take minutes, and the crew's minutes are limited. */
  readonly visits: boolean;
  /** Visits also take their cost off the value. */
  readonly priced?: boolean;
}

/**
 * A made-up portfolio for measuring: dwellings in buildings of 20, 6–10 options of 150 to 1,900 dollars, three years worth 10, 9 and 8, caps of
 * 10 % of everything each.
 */
export function threeYears({ dwellings, visits, priced = false }: ThreeYears): SelectionProblem {
  const even = evenNumbers(dwellings);
  let cost = 0;
  let minutes = 0;
  const groups = Array.from({ length: dwellings }, (_, g): SelectionGroup => {
    const base = 15_000 + even() * 35_000;
    const level = 2 + even() * 10;
    const options = Array.from({ length: 6 + Math.floor(even() * 5) }, (__, o) => {
      const cost_cents = Math.round(base * (0.7 + even() * 3));
      return { id: String(o), cost_cents, value: Math.round((cost_cents / 100) * level * (0.6 + 0.8 * even())), crewMinutes: visits ? Math.round((cost_cents / 500) * (0.6 + 0.8 * even())) : 0 };
    });
    cost += Math.max(...options.map(({ cost_cents }) => cost_cents));
    minutes += Math.max(...options.map(({ crewMinutes }) => crewMinutes));
    return { id: String(g).padStart(6, '0'), building: String(Math.floor(g / 20)).padStart(5, '0'), options };
  });
  const buildings = Array.from({ length: Math.ceil(dwellings / 20) }, (_, b) => {
    const visit_cents = visits ? 30_000 + Math.round(even() * 120_000) : 0;
    // A cent of cost is worth about a cent of value × 10 in the first year here: the price of a visit in the same money.
    return { id: String(b).padStart(5, '0'), visit_cents, visitMinutes: visits ? 120 : 0, ...(priced ? { visitPrice: [10, 9, 8].map((factor) => Math.round((factor * visit_cents) / 100)) } : {}) };
  });
  return { groups, phases: [10, 9, 8].map((valueFactor) => ({ cap_cents: Math.round(cost / 10), valueFactor, ...(visits ? { crewMinutes: Math.round(minutes / 10) } : {}) })), buildings };
}
