import type { ChosenOption, SelectionBuilding, SelectionGroup, SelectionOption, SelectionProblem } from './problem.js';

/** A choice looked at rule by rule. */
export interface ChoiceFindings {
  readonly findings: readonly string[];
  readonly value: number;
  readonly cost_cents: readonly number[];
  readonly crewMinutes: readonly number[];
}

interface Line {
  readonly group: SelectionGroup;
  readonly option: SelectionOption;
  readonly phase: number;
}

function lines(problem: SelectionProblem, chosen: readonly ChosenOption[], say: (text: string) => void): Line[] {
  const groups = new Map(problem.groups.map((group) => [group.id, group]));
  const taken = new Set<string>();
  const found: Line[] = [];
  for (const each of chosen) {
    const group = groups.get(each.group);
    const option = group?.options.find((one) => one.id === each.option);
    if (group === undefined || option === undefined || problem.phases[each.phase] === undefined) {
      say(`${each.group} ${each.option} in phase ${each.phase} does not exist`);
      continue;
    }
    if (taken.has(group.id)) say(`${group.id} is taken twice`);
    taken.add(group.id);
    if (group.phases?.includes(each.phase) === false || option.phases?.includes(each.phase) === false) say(`${group.id} ${option.id} may not be taken in phase ${each.phase}`);
    found.push({ group, option, phase: each.phase });
  }
  for (const id of problem.must ?? []) if (!taken.has(id)) say(`${id} must be taken and is not`);
  for (const id of problem.mustNot ?? []) if (taken.has(id)) say(`${id} must not be taken and is`);
  for (const [a, b] of problem.exclusive ?? []) if (taken.has(a) && taken.has(b)) say(`${a} and ${b} exclude each other`);
  return found;
}

/** Rules of one building; gives what it costs with its visits, by phase. */
function buildingLines(building: SelectionBuilding, own: readonly Line[], say: (text: string) => void) {
  const cost = new Map<number, number>();
  for (const { option, phase } of own) cost.set(phase, (cost.get(phase) ?? 0) + option.cost_cents);
  let total = 0;
  for (const [phase, options] of cost) {
    if (options < (building.minSpendIfVisited_cents ?? 0)) say(`${building.id} is visited in phase ${phase} for ${options} cents, below its least spend`);
    total += options + building.visit_cents;
  }
  if (total > (building.cap_cents ?? Infinity)) say(`${building.id} costs ${total} cents, over its cap`);
  const families = new Set(own.flatMap(({ option }) => option.family ?? []));
  if (building.oneFamily === true && families.size > 1) say(`${building.id} mixes ${[...families].join(', ')}`);
  return { visited: [...cost.keys()], total };
}

function keepTogetherPrice(problem: SelectionProblem, found: readonly Line[]): number {
  const phaseOf = new Map(found.map((line) => [line.group.id, line.phase]));
  let price = 0;
  for (const set of problem.keepTogether ?? []) {
    const phases = new Set(set.groups.map((id) => phaseOf.get(id) ?? -1));
    if (phases.size > 1) price += set.price;
  }
  return price;
}

/**
 * Works a choice out again from the problem alone: rules kept, value, cost and minutes.
 *
 * @param problem as given to select
 * @param chosen lines of the choice
 * @returns every broken rule in words; value less the prices of visits and of sets not kept together; cost and minutes by phase with visits
 * @throws never
 */
export function choiceFindings(problem: SelectionProblem, chosen: readonly ChosenOption[]): ChoiceFindings {
  const findings: string[] = [];
  const say = (text: string): void => void findings.push(text);
  const found = lines(problem, chosen, say);
  const cost = problem.phases.map(() => 0);
  const minutes = problem.phases.map(() => 0);
  let value = 0 - keepTogetherPrice(problem, found);
  for (const { option, phase } of found) {
    value += option.value * (problem.phases[phase]!.valueFactor ?? 1);
    cost[phase]! += option.cost_cents;
    minutes[phase]! += option.crewMinutes ?? 0;
  }
  const spent = new Map<string, number>();
  const byBuilding = new Map<string | undefined, Line[]>();
  for (const line of found) {
    const own = byBuilding.get(line.group.building);
    if (own === undefined) byBuilding.set(line.group.building, [line]);
    else own.push(line);
  }
  for (const building of problem.buildings ?? []) {
    const { visited, total } = buildingLines(building, byBuilding.get(building.id) ?? [], say);
    for (const phase of visited) {
      value -= building.visitPrice?.[phase] ?? 0;
      cost[phase]! += building.visit_cents;
      minutes[phase]! += building.visitMinutes;
    }
    if (building.owner !== undefined) spent.set(building.owner, (spent.get(building.owner) ?? 0) + total);
  }
  for (const owner of problem.owners ?? []) {
    if ((spent.get(owner.id) ?? 0) > owner.cap_cents) say(`owner ${owner.id} spends ${String(spent.get(owner.id))} cents, over the cap`);
  }
  problem.phases.forEach((phase, t) => {
    if (cost[t]! > phase.cap_cents) say(`phase ${t} costs ${cost[t]!} cents, over its cap of ${phase.cap_cents}`);
    if (minutes[t]! > (phase.crewMinutes ?? Infinity)) say(`phase ${t} takes ${minutes[t]!} crew minutes, over its ${String(phase.crewMinutes)}`);
  });
  return { findings, value, cost_cents: cost, crewMinutes: minutes };
}
