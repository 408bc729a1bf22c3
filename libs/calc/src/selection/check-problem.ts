import type { SelectionProblem } from './problem.js';

/** More phases than this do not fit the bit masks of phases. */
const MOST_PHASES = 24;
/** With visits every set of visited phases of a building is looked at. */
const MOST_VISIT_PHASES = 10;

const whole = (value: number, name: string, least = 0): void => {
  if (!(Number.isSafeInteger(value) && value >= least)) {
    throw new RangeError(`${name} must be a whole number${least === 0 ? ' ≥ 0' : ''}, got ${String(value)}`);
  }
};

const unique = (list: readonly { readonly id: string }[], name: string): Set<string> => {
  const ids = new Set(list.map((each) => each.id));
  if (ids.size === list.length) return ids;
  const seen = new Set<string>();
  for (const { id } of list) {
    if (seen.has(id)) throw new RangeError(`${name} ids must differ, got ${id} twice`);
    seen.add(id);
  }
  return ids;
};

const known = (id: string, ids: ReadonlySet<string>, name: string): void => {
  if (!ids.has(id)) throw new RangeError(`${name} must be listed, got ${id}`);
};

function checkPhaseList(list: readonly number[] | undefined, phases: number, name: string): void {
  for (const t of list ?? []) {
    if (!(Number.isInteger(t) && t >= 0 && t < phases)) throw new RangeError(`${name} phases must be 0…${phases - 1}, got ${String(t)}`);
  }
}

function checkGroups(problem: SelectionProblem, buildings: ReadonlySet<string>): void {
  const phases = problem.phases.length;
  const seen = new Set<string>();
  for (const group of problem.groups) {
    checkPhaseList(group.phases, phases, `group ${group.id}`);
    if (group.building !== undefined && problem.buildings !== undefined) known(group.building, buildings, `building of group ${group.id}`);
    seen.clear();
    for (const option of group.options) {
      if (!(Number.isSafeInteger(option.cost_cents) && option.cost_cents >= 0)) whole(option.cost_cents, `cost_cents of ${group.id} ${option.id}`);
      if (!Number.isSafeInteger(option.value)) whole(option.value, `value of ${group.id} ${option.id}`, -Infinity);
      if (option.crewMinutes !== undefined) whole(option.crewMinutes, `crewMinutes of ${group.id} ${option.id}`);
      if (option.phases !== undefined) checkPhaseList(option.phases, phases, `option ${group.id} ${option.id}`);
      if (seen.has(option.id)) throw new RangeError(`option ids of a group must differ, got ${group.id} ${option.id} twice`);
      seen.add(option.id);
    }
  }
}

function checkRules(problem: SelectionProblem, groups: ReadonlySet<string>): void {
  for (const id of problem.must ?? []) known(id, groups, 'group of must');
  for (const id of problem.mustNot ?? []) known(id, groups, 'group of mustNot');
  for (const [a, b] of problem.exclusive ?? []) {
    known(a, groups, 'group of exclusive');
    known(b, groups, 'group of exclusive');
    if (a === b) throw new RangeError(`exclusive must name two groups, got ${a} twice`);
  }
  for (const { groups: ids, price } of problem.keepTogether ?? []) {
    for (const id of ids) known(id, groups, 'group of keepTogether');
    if (ids.length < 2 || new Set(ids).size !== ids.length) throw new RangeError(`keepTogether must name at least two different groups, got ${ids.join(', ')}`);
    whole(price, 'price of keepTogether');
  }
}

/**
 * Refuses a problem that names what is not there or holds anything but whole numbers.
 *
 * @param problem any
 * @returns nothing
 * @throws RangeError naming the first fault
 */
export function checkProblem(problem: SelectionProblem): void {
  const { phases } = problem;
  if (phases.length < 1 || phases.length > MOST_PHASES) throw new RangeError(`phases must be 1…${MOST_PHASES}, got ${phases.length}`);
  phases.forEach((phase, t) => {
    whole(phase.cap_cents, `cap_cents of phase ${t}`);
    if (phase.crewMinutes !== undefined) whole(phase.crewMinutes, `crewMinutes of phase ${t}`);
    if (phase.valueFactor !== undefined) whole(phase.valueFactor, `valueFactor of phase ${t}`);
  });
  const owners = unique(problem.owners ?? [], 'owner');
  for (const owner of problem.owners ?? []) whole(owner.cap_cents, `cap_cents of owner ${owner.id}`);
  const buildings = unique(problem.buildings ?? [], 'building');
  for (const building of problem.buildings ?? []) {
    whole(building.visit_cents, `visit_cents of building ${building.id}`);
    whole(building.visitMinutes, `visitMinutes of building ${building.id}`);
    if (building.visitPrice !== undefined && building.visitPrice.length !== phases.length) throw new RangeError(`visitPrice of building ${building.id} must have a price for each of the ${phases.length} phases, got ${building.visitPrice.length}`);
    for (const price of building.visitPrice ?? []) whole(price, `visitPrice of building ${building.id}`);
    if (building.cap_cents !== undefined) whole(building.cap_cents, `cap_cents of building ${building.id}`);
    if (building.minSpendIfVisited_cents !== undefined) whole(building.minSpendIfVisited_cents, `minSpendIfVisited_cents of building ${building.id}`);
    if (phases.length > MOST_VISIT_PHASES && building.visit_cents + building.visitMinutes + (building.minSpendIfVisited_cents ?? 0) + (building.visitPrice ?? []).reduce((a, b) => a + b, 0) > 0) {
      throw new RangeError(`phases must be 1…${MOST_VISIT_PHASES} where a building has a visit or a least spend, got ${phases.length}`);
    }
    if (building.owner !== undefined) known(building.owner, owners, `owner of building ${building.id}`);
  }
  checkGroups(problem, buildings);
  checkRules(problem, unique(problem.groups, 'group'));
  if (problem.timeLimit_s !== undefined && !(problem.timeLimit_s > 0)) throw new RangeError(`timeLimit_s must be > 0, got ${String(problem.timeLimit_s)}`);
}
