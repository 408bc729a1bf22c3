import type { PartModel } from './part-model.js';

const NONE: readonly number[] = [];

/** Price of a set that is not in one phase as a whole, nor left as a whole; −1 stands for a group that cannot be taken. */
export function brokenPrice(model: PartModel, item: Int32Array, set: { readonly groups: readonly number[]; readonly price: number }): number {
  const phaseOf = (g: number): number => (g < 0 || item[g]! < 0 ? -1 : model.phase[item[g]!]!);
  const first = phaseOf(set.groups[0]!);
  return set.groups.every((g) => phaseOf(g) === first) ? 0 : set.price;
}

/** Worth of a whole choice: values of its items less prices of visits and of broken sets. */
export function worthOf(model: PartModel, item: Int32Array): number {
  let worth = 0;
  model.units.forEach((unit) => {
    let open = 0;
    for (let g = unit.from; g < unit.to; g++) {
      const j = item[g]!;
      if (j < 0) continue;
      worth += model.value[j]!;
      open |= 1 << model.phase[j]!;
    }
    if (unit.visits) unit.visitPrice.forEach((price, t) => (worth -= (open >> t) % 2 === 0 ? 0 : price));
  });
  for (const set of model.together) worth -= brokenPrice(model, item, set);
  return worth;
}

/** A choice while it is changed: what is taken and what every limit has left. Least spends and musts may be open meanwhile. */
export class PlanState {
  /** Item of each group, −1 for none. */
  readonly item: Int32Array;
  readonly capLeft: Float64Array;
  readonly minutesLeft: Float64Array;
  readonly ownerLeft: Float64Array;
  readonly unitLeft: Float64Array;
  /** By unit and phase: cost of options, and how many. */
  readonly spend: Float64Array;
  readonly count: Int32Array;
  /** Value of the items less prices of visits; prices of broken sets apart. */
  value = 0;
  private readonly family: Int32Array;
  private readonly familyCount: Int32Array;
  private readonly partners: readonly (readonly number[])[];
  private readonly phases: number;
  /** Sets with a price that a group is in. */
  private readonly setsOf: ReadonlyMap<number, readonly number[]>;

  constructor(readonly model: PartModel) {
    const { phases, owners } = model.of;
    const T = phases.length;
    this.phases = T;
    this.item = new Int32Array(model.groups.length).fill(-1);
    this.capLeft = Float64Array.from(phases, ({ cap }) => cap);
    this.minutesLeft = Float64Array.from(phases, ({ minutes }) => minutes);
    this.ownerLeft = Float64Array.from(owners, ({ cap }) => cap);
    this.unitLeft = Float64Array.from(model.units, ({ cap }) => cap);
    this.spend = new Float64Array(model.units.length * T);
    this.count = new Int32Array(model.units.length * T);
    this.family = new Int32Array(model.units.length).fill(-1);
    this.familyCount = new Int32Array(model.units.length);
    const partners: number[][] = [];
    for (const { a, b } of model.exclusive) {
      (partners[a] ??= []).push(b);
      (partners[b] ??= []).push(a);
    }
    this.partners = partners;
    const setsOf = new Map<number, number[]>();
    model.together.forEach(({ groups }, s) => {
      for (const g of groups) setsOf.set(g, [...(setsOf.get(g) ?? []), s]);
    });
    this.setsOf = setsOf;
  }

  /** May this item be added to a group that has none, as things stand? */
  fits(j: number): boolean {
    const { model } = this;
    const g = model.groupOf[j]!;
    const u = model.unitOf[g]!;
    const unit = model.units[u]!;
    const t = model.phase[j]!;
    const first = unit.visits && this.count[u * this.phases + t] === 0;
    const cost = model.cost[j]! + (first ? unit.visit : 0);
    if (cost > this.capLeft[t]! || model.minutes[j]! + (first ? unit.visitMinutes : 0) > this.minutesLeft[t]!) return false;
    if (cost > this.unitLeft[u]! || (unit.owner >= 0 && cost > this.ownerLeft[unit.owner]!)) return false;
    if (unit.oneFamily && model.family[j]! >= 0 && this.familyCount[u]! > 0 && this.family[u] !== model.family[j]) return false;
    for (const other of this.partners[g] ?? NONE) if (this.item[other]! >= 0) return false;
    return true;
  }

  put(j: number): void {
    const { model } = this;
    const g = model.groupOf[j]!;
    const u = model.unitOf[g]!;
    this.item[g] = j;
    if (model.units[u]!.oneFamily && model.family[j]! >= 0) {
      this.family[u] = model.family[j]!;
      this.familyCount[u]!++;
    }
    const at = u * this.phases + model.phase[j]!;
    this.pay(j, this.count[at] === 0 ? 1 : 0, 1);
    this.count[at]!++;
    this.spend[at]! += model.cost[j]!;
  }

  /** Takes the item of a group off; nothing happens when there is none. */
  clear(g: number): void {
    const { model } = this;
    const j = this.item[g]!;
    if (j < 0) return;
    const u = model.unitOf[g]!;
    this.item[g] = -1;
    if (model.units[u]!.oneFamily && model.family[j]! >= 0) this.familyCount[u]!--;
    const at = u * this.phases + model.phase[j]!;
    this.count[at]!--;
    this.spend[at]! -= model.cost[j]!;
    this.pay(j, this.count[at] === 0 ? 1 : 0, -1);
  }

  private pay(j: number, visits: number, sign: 1 | -1): void {
    const { model } = this;
    const u = model.unitOf[model.groupOf[j]!]!;
    const unit = model.units[u]!;
    const t = model.phase[j]!;
    this.value += sign * (model.value[j]! - visits * unit.visitPrice[t]!);
    const cost = sign * (model.cost[j]! + visits * unit.visit);
    this.capLeft[t]! -= cost;
    this.minutesLeft[t]! -= sign * (model.minutes[j]! + visits * unit.visitMinutes);
    this.unitLeft[u]! -= cost;
    if (unit.owner >= 0) this.ownerLeft[unit.owner]! -= cost;
  }

  /** Phases a unit is visited in. */
  openOf(u: number): number {
    let mask = 0;
    for (let t = 0; t < this.phases; t++) if (this.count[u * this.phases + t]! > 0) mask |= 1 << t;
    return mask;
  }

  /** Is the least spend of a unit met in every phase it is visited in? */
  spendsEnough(u: number): boolean {
    const { minSpend } = this.model.units[u]!;
    if (minSpend === 0) return true;
    for (let at = u * this.phases; at < (u + 1) * this.phases; at++) if (this.count[at]! > 0 && this.spend[at]! < minSpend) return false;
    return true;
  }

  /** Every must taken and every least spend met: with the limits kept by fits, a choice that counts. */
  complete(): boolean {
    const { model } = this;
    for (let g = 0; g < this.item.length; g++) if (model.must[g] === 1 && this.item[g]! < 0) return false;
    for (let u = 0; u < model.units.length; u++) if (!this.spendsEnough(u)) return false;
    return true;
  }

  /** Prices of all sets not kept together. */
  allBroken(): number {
    return this.model.together.reduce((sum, set) => sum + brokenPrice(this.model, this.item, set), 0);
  }

  /** Prices of the broken sets that any of these groups is in. */
  brokenAround(groups: readonly number[]): number {
    if (this.model.together.length === 0) return 0;
    const sets = new Set(groups.flatMap((g) => this.setsOf.get(g) ?? NONE));
    let sum = 0;
    for (const s of sets) sum += brokenPrice(this.model, this.item, this.model.together[s]!);
    return sum;
  }

  /** Worth of the choice as it stands. */
  total(): number {
    return this.value - this.allBroken();
  }

  /** Takes over the items of another choice of the same part. */
  become(items: Int32Array): void {
    for (let g = 0; g < items.length; g++) this.clear(g);
    for (const j of items) if (j >= 0) this.put(j);
  }
}
