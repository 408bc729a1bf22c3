import type { SelectionBuilding, SelectionGroup, SelectionOption, SelectionProblem, SelectionResult } from './problem.js';

/** What one more of each limit is worth, by phase. */
export interface LimitPrice {
  readonly phase: number;
  /** Value of the next 100 cents of cap. */
  readonly valueOfNextDollar: number;
  readonly valueOfNextCrewMinute: number;
}

/** Why an option is in the plan, or what would have to be true for it to enter. */
export interface OptionReason {
  readonly group: string;
  readonly option: string;
  readonly phase: number;
  readonly taken: boolean;
  /** Value less the price of all it uses; a visit counts when the plan does not visit the building in that phase anyway. */
  readonly reducedValue: number;
  /** How much it falls behind the best way of its group at these prices; 0 for the best. */
  readonly behind: number;
  /** Option value (before the phase factor) at which it would pay for what it uses; null when its phase counts for nothing. */
  readonly valueNeeded: number | null;
  /** Cost at which it would; null when no cost, however low, is enough. */
  readonly costNeeded_cents: number | null;
}

/** Prices of a result and the reasons of all its options. */
export interface SelectionReasons {
  readonly prices: readonly LimitPrice[];
  /** By group, option and phase, in the order of the problem. */
  readonly options: readonly OptionReason[];
}

/** Prices of the result, with which phases of which building are visited. */
class Prices {
  private readonly visited: ReadonlySet<string>;
  private readonly pairs = new Map<string, number>();

  constructor(
    problem: SelectionProblem,
    private readonly result: Extract<SelectionResult, { value: number }>,
  ) {
    const buildingOf = new Map(problem.groups.map((group) => [group.id, group.building]));
    this.visited = new Set(result.chosen.map(({ group, phase }) => `${String(buildingOf.get(group))} ${phase}`));
    problem.exclusive?.forEach((pair, e) => {
      for (const id of pair) this.pairs.set(id, (this.pairs.get(id) ?? 0) + result.certificate.multipliers.exclusive[e]!);
    });
  }

  /** Value of a cent spent in a building and phase. */
  cent(building: SelectionBuilding | undefined, t: number): number {
    const { multipliers: m } = this.result.certificate;
    const owner = building?.owner === undefined ? 0 : (m.owners[building.owner] ?? 0);
    return m.cap[t]! + owner + (building === undefined ? 0 : (m.buildingCap[building.id] ?? 0));
  }

  /** Price of what an option uses besides its own cost. */
  besides(at: { group: SelectionGroup; option: SelectionOption; building: SelectionBuilding | undefined; t: number }): number {
    const { building, t } = at;
    const minute = this.result.certificate.multipliers.crewMinutes[t]!;
    const own = (at.option.crewMinutes ?? 0) * minute + (this.pairs.get(at.group.id) ?? 0);
    if (building === undefined || this.visited.has(`${building.id} ${t}`)) return own;
    return own + building.visit_cents * this.cent(building, t) + building.visitMinutes * minute + (building.visitPrice?.[t] ?? 0);
  }
}

function reasonOf(problem: SelectionProblem, prices: Prices, at: { group: SelectionGroup; option: SelectionOption; building: SelectionBuilding | undefined; t: number }) {
  const factor = problem.phases[at.t]!.valueFactor ?? 1;
  const cent = prices.cent(at.building, at.t);
  const besides = prices.besides(at);
  const reducedValue = at.option.value * factor - at.option.cost_cents * cent - besides;
  const left = at.option.value * factor - besides;
  return {
    group: at.group.id,
    option: at.option.id,
    phase: at.t,
    reducedValue,
    valueNeeded: factor === 0 ? null : Math.ceil((at.option.cost_cents * cent + besides) / factor),
    costNeeded_cents: left < 0 ? null : cent === 0 ? at.option.cost_cents : Math.floor(left / cent),
  };
}

/**
 * Says what the next dollar and crew minute are worth in each phase, and of every option why it is in the plan or what would
 * have to be true for it to enter.
 *
 *   reduced value = value × factor − cost × price of a cent − minutes × price of a minute − a visit that would be new
 *
 * With a gap left the prices decide most options but not all: some near 0 are in or out because whole options must fit.
 *
 * @param problem as given to select
 * @param result a result with a choice
 * @returns prices by phase, and reasons of all options in all phases they may be taken in
 * @throws RangeError when the result holds no choice
 * @source reduced values of the Lagrangian relaxation
 */
export function explain(problem: SelectionProblem, result: SelectionResult): SelectionReasons {
  if (result.value === null) throw new RangeError('result must hold a choice, got none');
  const { multipliers } = result.certificate;
  const prices = new Prices(problem, result);
  const buildings = new Map((problem.buildings ?? []).map((building) => [building.id, building]));
  const taken = new Set(result.chosen.map(({ group, option, phase }) => JSON.stringify([group, option, phase])));
  const out = new Set(problem.mustNot ?? []);
  const options = problem.groups.flatMap((group) => {
    if (out.has(group.id)) return [];
    const building = group.building === undefined ? undefined : buildings.get(group.building);
    const ways = group.options.flatMap((option) =>
      problem.phases.flatMap((_, t) => {
        const barred = group.phases?.includes(t) === false || option.phases?.includes(t) === false;
        return barred ? [] : [reasonOf(problem, prices, { group, option, building, t })];
      }),
    );
    const best = ways.reduce((most, { reducedValue }) => Math.max(most, reducedValue), 0);
    return ways.map((way) => ({ ...way, taken: taken.has(JSON.stringify([way.group, way.option, way.phase])), behind: best - way.reducedValue }));
  });
  return {
    prices: problem.phases.map((_, phase) => ({ phase, valueOfNextDollar: multipliers.cap[phase]! * 100, valueOfNextCrewMinute: multipliers.crewMinutes[phase]! })),
    options,
  };
}
