import type { PartModel } from './part-model.js';
import type { Restriction } from './restriction.js';

/** What is used for certain in each limit once visits and groups are fixed. */
class CertainUse {
  readonly cost: Float64Array;
  readonly minutes: Float64Array;
  readonly owner: Float64Array;
  readonly unit: Float64Array;
  /** Cost of options by unit and phase. */
  readonly spend: Float64Array;
  /** Least cost and minutes of each group that must be taken, by phase if only one is left (−1 otherwise). */
  readonly leastCost: Float64Array;
  readonly leastMinutes: Float64Array;
  readonly onlyPhase: Int32Array;
  /** A group that must be taken and has no item left, or −1. */
  private stuck = -1;

  constructor(
    private readonly model: PartModel,
    private readonly within: Restriction,
  ) {
    const T = model.of.phases.length;
    this.cost = new Float64Array(T);
    this.minutes = new Float64Array(T);
    this.owner = new Float64Array(model.of.owners.length);
    this.unit = new Float64Array(model.units.length);
    this.spend = new Float64Array(model.units.length * T);
    this.leastCost = new Float64Array(model.groups.length);
    this.leastMinutes = new Float64Array(model.groups.length);
    this.onlyPhase = new Int32Array(model.groups.length).fill(-1);
    for (let g = 0; g < model.groups.length; g++) if (within.must[g] === 1) this.addGroup(g, T);
    model.units.forEach((_, u) => this.addUnit(u, T));
  }

  private addGroup(g: number, T: number): void {
    const { model, within } = this;
    let cost = Infinity;
    let minutes = Infinity;
    let phases = 0;
    for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) {
      if (within.item[j] === 0) continue;
      cost = Math.min(cost, model.cost[j]!);
      minutes = Math.min(minutes, model.minutes[j]!);
      phases |= 1 << model.phase[j]!;
    }
    if (phases === 0) {
      this.stuck = g;
      return;
    }
    this.leastCost[g] = cost;
    this.leastMinutes[g] = minutes;
    const u = model.unitOf[g]!;
    this.unit[u]! += cost;
    if ((phases & (phases - 1)) !== 0) return;
    const t = 31 - Math.clz32(phases);
    this.onlyPhase[g] = t;
    this.minutes[t]! += minutes;
    this.spend[u * T + t]! += cost;
    if (model.units[u]!.visits) within.forced[u]! |= 1 << t;
  }

  private addUnit(u: number, T: number): void {
    const unit = this.model.units[u]!;
    const forced = this.within.forced[u]!;
    let inPhases = 0;
    for (let t = 0; t < T; t++) {
      const visited = (forced >> t) % 2 !== 0;
      const options = visited ? Math.max(unit.minSpend, this.spend[u * T + t]!) : this.spend[u * T + t]!;
      const visit = visited && unit.visits ? unit.visit : 0;
      this.cost[t]! += options + visit;
      inPhases += options + visit;
      if (visited && unit.visits) {
        this.minutes[t]! += unit.visitMinutes;
        this.unit[u]! += unit.visit;
      }
    }
    // Groups with several phases left count in the unit's own sum, whichever is more.
    this.unit[u] = Math.max(this.unit[u]!, inPhases);
    if (unit.owner >= 0) this.owner[unit.owner]! += this.unit[u];
  }

  /** The first limit that what is certain passes, in words; null when all hold. */
  overrun(): string | null {
    const { phases, owners, groupIds } = this.model.of;
    if (this.stuck >= 0) return `${groupIds[this.model.groups[this.stuck]!]!} must be taken, and none of its options is left that fits`;
    const u = this.model.units.findIndex(({ cap }, i) => this.unit[i]! > cap);
    if (u >= 0) return `what must be taken in building ${this.model.of.buildings[this.model.units[u]!.building]!.id} passes its cap`;
    for (let t = 0; t < phases.length; t++) {
      if (this.cost[t]! > phases[t]!.cap) return `what must be taken costs more than the cap of phase ${t}, visits and least spends included`;
      if (this.minutes[t]! > phases[t]!.minutes) return `what must be taken needs more crew minutes than phase ${t} has, visits included`;
    }
    const w = owners.findIndex(({ cap }, i) => this.owner[i]! > cap);
    return w < 0 ? null : `what must be taken costs more than the cap of owner ${owners[w]!.id}, visits included`;
  }

  /** Does an item fit beside all that is certain? Its group's own least use is taken out first. */
  leavesRoom(j: number, T: number): boolean {
    const { model, within } = this;
    const g = model.groupOf[j]!;
    const u = model.unitOf[g]!;
    const unit = model.units[u]!;
    const t = model.phase[j]!;
    const { cap, minutes } = model.of.phases[t]!;
    const visited = (within.forced[u]! >> t) % 2 !== 0;
    const own = this.onlyPhase[g] === t;
    const before = this.spend[u * T + t]!;
    const after = before - (own ? this.leastCost[g]! : 0) + model.cost[j]!;
    const floor = unit.minSpend;
    const moreCost = Math.max(after, floor) - (visited ? Math.max(before, floor) : before) + (visited || !unit.visits ? 0 : unit.visit);
    const moreMinutes = model.minutes[j]! - (own ? this.leastMinutes[g]! : 0) + (visited || !unit.visits ? 0 : unit.visitMinutes);
    if (this.cost[t]! + moreCost > cap || this.minutes[t]! + moreMinutes > minutes) return false;
    const inUnit = model.cost[j]! - this.leastCost[g]! + (visited || !unit.visits ? 0 : unit.visit);
    return unit.cap === Infinity || this.unit[u]! + Math.min(inUnit, moreCost) <= unit.cap;
  }
}

/** Takes out the items that nothing certain leaves room for, and visits with no item; tells whether anything changed. */
function strike(model: PartModel, within: Restriction, use: CertainUse): boolean {
  const T = model.of.phases.length;
  const left = new Int32Array(model.units.length);
  let changed = false;
  for (let j = 0; j < model.option.length; j++) {
    if (within.item[j] === 0) continue;
    const u = model.unitOf[model.groupOf[j]!]!;
    if ((within.may[u]! >> model.phase[j]!) % 2 === 0 || !use.leavesRoom(j, T)) {
      within.item[j] = 0;
      changed = true;
    } else left[u]! |= 1 << model.phase[j]!;
  }
  for (let u = 0; u < left.length; u++) {
    if ((within.may[u]! & ~left[u]!) === 0) continue;
    within.may[u] = within.may[u]! & left[u]!;
    changed = true;
  }
  for (const { a, b } of model.exclusive) {
    for (const [g, other] of [[a, b], [b, a]] as const) {
      if (within.must[g] === 0) continue;
      for (let j = model.itemStart[other]!; j < model.itemStart[other + 1]!; j++) {
        changed ||= within.item[j] === 1;
        within.item[j] = 0;
      }
    }
  }
  return changed;
}

/**
 * Draws the consequences of what is fixed: items without room, visits without items, limits already passed.
 *
 * @param model part
 * @param within restriction, tightened in place
 * @returns why nothing can keep the limits any more, or null
 */
export function propagate(model: PartModel, within: Restriction): string | null {
  for (;;) {
    const use = new CertainUse(model, within);
    const why = use.overrun();
    if (why !== null) return why;
    const u = model.units.findIndex((_, i) => (within.forced[i]! & ~within.may[i]!) !== 0);
    if (u >= 0) return `nothing is left for a visit of building ${model.of.buildings[model.units[u]!.building]?.id ?? String(u)} that must be`;
    if (!strike(model, within, use)) return null;
  }
}
