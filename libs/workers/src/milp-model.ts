import type { SelectionBuilding, SelectionGroup, SelectionProblem } from '#calc';

/** A mixed-integer program by rows: maximise, all columns between 0 and 1 and whole. */
export interface MilpModel {
  readonly objective: number[];
  readonly rowLower: number[];
  readonly rowUpper: number[];
  /** Entries of row r are rowStart[r] … rowStart[r+1] − 1. */
  readonly rowStart: number[];
  readonly column: number[];
  readonly coefficient: number[];
  /** What each of the first columns means. */
  readonly choices: readonly { readonly group: string; readonly option: string; readonly phase: number }[];
}

type Entry = readonly [column: number, coefficient: number];

/** Rows and columns while the model is written. */
class Writer {
  readonly model = { objective: [] as number[], rowLower: [] as number[], rowUpper: [] as number[], rowStart: [0], column: [] as number[], coefficient: [] as number[], choices: [] as { group: string; option: string; phase: number }[] };
  /** Entries that add up over the whole problem: cost and minutes by phase, cost by owner. */
  private readonly sums = new Map<string, Entry[]>();

  columnOf(objective: number): number {
    return this.model.objective.push(objective) - 1;
  }

  row(lower: number, upper: number, entries: readonly Entry[]): void {
    if (entries.length === 0 && lower <= 0) return;
    for (const [column, coefficient] of entries) {
      this.model.column.push(column);
      this.model.coefficient.push(coefficient);
    }
    this.model.rowLower.push(lower);
    this.model.rowUpper.push(upper);
    this.model.rowStart.push(this.model.column.length);
  }

  count(sum: string, column: number, coefficient: number): void {
    if (coefficient === 0) return;
    const entries = this.sums.get(sum);
    if (entries === undefined) this.sums.set(sum, [[column, coefficient]]);
    else entries.push([column, coefficient]);
  }

  sum(of: string): readonly Entry[] {
    return this.sums.get(of) ?? [];
  }
}

/** A column for each way to take a group; gives them by phase. */
function groupColumns(to: Writer, problem: SelectionProblem, group: SelectionGroup): number[][] {
  const byPhase: number[][] = problem.phases.map(() => []);
  problem.phases.forEach(({ valueFactor }, phase) => {
    if (group.phases?.includes(phase) === false) return;
    for (const option of group.options) {
      if (option.phases?.includes(phase) === false) continue;
      const column = to.columnOf(option.value * (valueFactor ?? 1));
      to.model.choices[column] = { group: group.id, option: option.id, phase };
      byPhase[phase]!.push(column);
      to.count(`cost ${phase}`, column, option.cost_cents);
      to.count(`minutes ${phase}`, column, option.crewMinutes ?? 0);
      to.count(`building ${String(group.building)}`, column, option.cost_cents);
      to.count(`spend ${String(group.building)} ${phase}`, column, option.cost_cents);
      if (option.family !== undefined) to.count(`family ${String(group.building)} ${option.family}`, column, 1);
    }
  });
  return byPhase;
}

/** Visits of a building, its least spend, its cap and its one film. */
function buildingRows(to: Writer, problem: SelectionProblem, at: { building: SelectionBuilding; groups: readonly number[][][] }): void {
  const { building } = at;
  problem.phases.forEach((_, phase) => {
    const visit = to.columnOf(-(building.visitPrice?.[phase] ?? 0));
    to.count(`cost ${phase}`, visit, building.visit_cents);
    to.count(`minutes ${phase}`, visit, building.visitMinutes);
    to.count(`building ${building.id}`, visit, building.visit_cents);
    for (const byPhase of at.groups) if (byPhase[phase]!.length > 0) to.row(-Infinity, 0, [...byPhase[phase]!.map((column): Entry => [column, 1]), [visit, -1]]);
    const least = building.minSpendIfVisited_cents ?? 0;
    if (least > 0) to.row(0, Infinity, [...to.sum(`spend ${building.id} ${phase}`), [visit, -least]]);
  });
  if (building.cap_cents !== undefined) to.row(-Infinity, building.cap_cents, to.sum(`building ${building.id}`));
  if (building.owner !== undefined) for (const [column, cost] of to.sum(`building ${building.id}`)) to.count(`owner ${building.owner}`, column, cost);
  if (building.oneFamily !== true) return;
  const families = new Set(problem.groups.flatMap((group) => (group.building === building.id ? group.options.flatMap(({ family }) => family ?? []) : [])));
  const picked: Entry[] = [];
  for (const family of families) {
    const pick = to.columnOf(0);
    picked.push([pick, 1]);
    for (const [column] of to.sum(`family ${building.id} ${family}`)) to.row(-Infinity, 0, [[column, 1], [pick, -1]]);
  }
  to.row(-Infinity, 1, picked);
}

/** A set is together in a phase, or broken and paid for, or left. */
function togetherRows(to: Writer, problem: SelectionProblem, columns: ReadonlyMap<string, number[][]>): void {
  for (const { groups, price } of problem.keepTogether ?? []) {
    const broken = to.columnOf(-price);
    const inPhase = problem.phases.map(() => to.columnOf(0));
    to.row(-Infinity, 1, [...inPhase, broken].map((column): Entry => [column, 1]));
    for (const id of groups) {
      inPhase.forEach((together, phase) => {
        const taken = columns.get(id)![phase]!.map((column): Entry => [column, 1]);
        to.row(-Infinity, 0, [...taken, [together, -1], [broken, -1]]);
        to.row(0, Infinity, [...taken, [together, -1]]);
      });
    }
  }
}

/**
 * The selection as a compact mixed-integer program: a column for each option and phase, a column for each visit.
 *
 * @param problem as select takes it
 * @returns rows of the program, and what its first columns mean
 */
export function milpModel(problem: SelectionProblem): MilpModel {
  const to = new Writer();
  const columns = new Map(problem.groups.map((group) => [group.id, groupColumns(to, problem, group)]));
  const must = new Set(problem.must ?? []);
  const mustNot = new Set(problem.mustNot ?? []);
  for (const [id, byPhase] of columns) {
    const all = byPhase.flat().map((column): Entry => [column, 1]);
    to.row(must.has(id) ? 1 : -Infinity, mustNot.has(id) ? 0 : 1, all);
  }
  for (const building of problem.buildings ?? []) {
    buildingRows(to, problem, { building, groups: problem.groups.filter((group) => group.building === building.id).map((group) => columns.get(group.id)!) });
  }
  for (const [a, b] of problem.exclusive ?? []) to.row(-Infinity, 1, [...columns.get(a)!.flat(), ...columns.get(b)!.flat()].map((column): Entry => [column, 1]));
  togetherRows(to, problem, columns);
  problem.phases.forEach((phase, t) => {
    to.row(-Infinity, phase.cap_cents, to.sum(`cost ${t}`));
    if (phase.crewMinutes !== undefined) to.row(-Infinity, phase.crewMinutes, to.sum(`minutes ${t}`));
  });
  for (const owner of problem.owners ?? []) to.row(-Infinity, owner.cap_cents, to.sum(`owner ${owner.id}`));
  return to.model;
}
