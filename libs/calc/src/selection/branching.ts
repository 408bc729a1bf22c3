import type { PartModel } from './part-model.js';
import type { Restriction } from './restriction.js';

/** Counts how often the relaxed choices of a node visit and take what: shares near a half are what the node has not decided. */
export class Shares {
  private readonly open: Float64Array;
  private readonly taken: Float64Array;
  private count = 0;

  constructor(private readonly model: PartModel) {
    this.open = new Float64Array(model.units.length * model.of.phases.length);
    this.taken = new Float64Array(model.option.length);
  }

  reset(): void {
    this.open.fill(0);
    this.taken.fill(0);
    this.count = 0;
  }

  add(chosen: Int32Array, open: Int32Array): void {
    const T = this.model.of.phases.length;
    this.count++;
    for (const j of chosen) if (j >= 0) this.taken[j]!++;
    for (let u = 0; u < open.length; u++) for (let t = 0; t < T; t++) if ((open[u]! >> t) % 2 !== 0) this.open[u * T + t]!++;
  }

  /** Undecided film of a building, visit, then undecided phase of a group, then undecided item; null when all is decided. */
  branch(within: Restriction): Branch | null {
    return this.family(within) ?? this.visit(within) ?? this.phase(within) ?? this.item(within);
  }

  private split(share: number): number {
    return Math.min(share, this.count - share);
  }

  private family(within: Restriction): Branch | null {
    const { model } = this;
    for (let u = 0; u < model.units.length; u++) {
      const unit = model.units[u]!;
      if (!unit.oneFamily) continue;
      const share = new Map<number, number>();
      for (let j = model.itemStart[unit.from]!; j < model.itemStart[unit.to]!; j++) {
        if (within.item[j] === 1 && model.family[j]! >= 0) share.set(model.family[j]!, (share.get(model.family[j]!) ?? 0) + this.taken[j]!);
      }
      if (share.size < 2) continue;
      const [family] = [...share].reduce((best, each) => (each[1] > best[1] ? each : best));
      return { kind: 'family', u, family, first: true };
    }
    return null;
  }

  private visit(within: Restriction): Branch | null {
    const T = this.model.of.phases.length;
    let best = -1;
    let branch: Branch | null = null;
    this.model.units.forEach((unit, u) => {
      if (!unit.visits) return;
      const free = within.may[u]! & ~within.forced[u]!;
      for (let t = 0; t < T; t++) {
        const share = this.open[u * T + t]!;
        if ((free >> t) % 2 === 0 || this.split(share) <= best) continue;
        best = this.split(share);
        branch = { kind: 'visit', u, t, first: share * 2 >= this.count };
      }
    });
    return branch;
  }

  private phase(within: Restriction): Branch | null {
    const { model } = this;
    const T = model.of.phases.length;
    const byPhase = new Float64Array(T);
    const worth = new Float64Array(T);
    let best = -1;
    let branch: Branch | null = null;
    for (let g = 0; g < model.groups.length; g++) {
      byPhase.fill(0);
      worth.fill(-1);
      for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) {
        if (within.item[j] === 0) continue;
        byPhase[model.phase[j]!]! += this.taken[j]!;
        worth[model.phase[j]!] = Math.max(worth[model.phase[j]!]!, model.value[j]!);
      }
      const open = worth.filter((w) => w >= 0).length;
      if (open === 0 || (open === 1 && within.must[g] === 1)) continue;
      for (let t = 0; t < T; t++) {
        const score = this.split(byPhase[t]!) * Math.max(1, worth[t]!);
        if (worth[t]! < 0 || score <= best) continue;
        best = score;
        branch = { kind: 'phase', g, t, first: byPhase[t]! * 2 >= this.count };
      }
    }
    return branch;
  }

  private item(within: Restriction): Branch | null {
    const { model } = this;
    let best = -1;
    let branch: Branch | null = null;
    for (let g = 0; g < model.groups.length; g++) {
      const left = Array.from({ length: model.itemStart[g + 1]! - model.itemStart[g]! }, (_, i) => model.itemStart[g]! + i).filter((j) => within.item[j] === 1);
      if (left.length < 2) continue;
      for (const j of left) {
        if (this.split(this.taken[j]!) <= best) continue;
        best = this.split(this.taken[j]!);
        branch = { kind: 'item', j, first: true };
      }
    }
    return branch;
  }
}

/** A question whose two answers split the node; `first` is the answer to look at first. */
export type Branch =
  | { readonly kind: 'family'; readonly u: number; readonly family: number; readonly first: boolean }
  | { readonly kind: 'visit'; readonly u: number; readonly t: number; readonly first: boolean }
  | { readonly kind: 'phase'; readonly g: number; readonly t: number; readonly first: boolean }
  | { readonly kind: 'item'; readonly j: number; readonly first: boolean };

function keepOnly(model: PartModel, within: Restriction, at: { g: number; keep: (j: number) => boolean }): void {
  for (let j = model.itemStart[at.g]!; j < model.itemStart[at.g + 1]!; j++) if (!at.keep(j)) within.item[j] = 0;
}

/**
 * The restriction with the question answered.
 *
 * @param model part
 * @param within restriction of the node, left as it is
 * @param to question and answer
 * @returns restriction of the child
 */
export function child(model: PartModel, within: Restriction, to: { readonly branch: Branch; readonly yes: boolean }): Restriction {
  const next: Restriction = { item: within.item.slice(), must: within.must.slice(), forced: within.forced.slice(), may: within.may.slice() };
  const { branch, yes } = to;
  if (branch.kind === 'family') {
    const { from, to: end } = model.units[branch.u]!;
    for (let g = from; g < end; g++) keepOnly(model, next, { g, keep: (j) => model.family[j]! < 0 || (model.family[j] === branch.family) === yes });
  } else if (branch.kind === 'visit') {
    if (yes) next.forced[branch.u]! |= 1 << branch.t;
    else next.may[branch.u]! &= ~(1 << branch.t);
  } else if (branch.kind === 'phase') {
    keepOnly(model, next, { g: branch.g, keep: (j) => (model.phase[j] === branch.t) === yes });
    if (yes) next.must[branch.g] = 1;
  } else {
    const g = model.groupOf[branch.j]!;
    keepOnly(model, next, { g, keep: (j) => (j === branch.j) === yes });
    if (yes) next.must[g] = 1;
  }
  return next;
}
