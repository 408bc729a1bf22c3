import type { Relaxation } from './relaxation.js';
import type { Restriction } from './restriction.js';

/** Other ways of one group, from the least loss up: the relaxed choice itself is way 0 with no loss and no change. */
export interface GroupWays {
  readonly group: number;
  /** Item of each way, −1 for none. */
  readonly item: readonly number[];
  readonly loss: readonly number[];
  /** Change of the use of each row, way by way. */
  readonly change: readonly Float64Array[];
}

/** A node in which only groups are undecided: losses add up, and so do uses. */
export interface DecidedNode {
  readonly groups: readonly GroupWays[];
  /** What the relaxed choice leaves of each row; below zero where it takes too much. */
  readonly slack: Float64Array;
  readonly price: Float64Array;
  /** What a plan may lose against the bound and still be worth more than the best known. */
  readonly room: number;
}

/** Are visits, families and sets out of the way? */
export function isDecided(relaxation: Relaxation, within: Restriction): boolean {
  return relaxation.model.units.every((unit, u) => relaxation.oneFamilyLeft(u) && unit.sets.length === 0 && (!unit.visits || within.may[u] === within.forced[u]));
}

/** Use of the rows by an item, added with a sign. */
function addUse(relaxation: Relaxation, j: number, to: { readonly use: Float64Array; readonly sign: number }): void {
  if (j < 0) return;
  const { model, rows } = relaxation;
  const { use, sign } = to;
  const T = model.of.phases.length;
  const g = model.groupOf[j]!;
  const u = model.unitOf[g]!;
  const t = model.phase[j]!;
  const cost = sign * model.cost[j]!;
  use[t]! += cost;
  use[T + t]! += sign * model.minutes[j]!;
  const { owner } = model.units[u]!;
  if (owner >= 0) use[rows.owner + owner]! += cost;
  use[rows.cap + u]! += cost;
  use[rows.minSpend + u * T + t]! -= cost;
  model.exclusive.forEach(({ a, b }, e) => {
    if (a === g || b === g) use[rows.exclusive + e]! += sign;
  });
}

/**
 * The node as losses and changes of use.
 *
 * @param relaxation evaluated at the node's prices, with its slack measured
 * @param within restriction of the node, see isDecided
 * @param at prices of the node, and room below its bound
 * @returns groups with more than one way that stays within the room
 */
export function decidedNode(relaxation: Relaxation, within: Restriction, at: { readonly price: Float64Array; readonly room: number }): DecidedNode {
  const { model, rows } = relaxation;
  const use = new Float64Array(rows.count);
  const groups: GroupWays[] = [];
  for (let g = 0; g < model.groups.length; g++) {
    const chosen = relaxation.chosen[g]!;
    const best = chosen < 0 ? 0 : relaxation.reduced[chosen]!;
    const open = model.units[model.unitOf[g]!]!.visits ? within.may[model.unitOf[g]!]! : -1;
    const ways: { j: number; loss: number }[] = [];
    if (chosen >= 0 && within.must[g] === 0 && best <= at.room) ways.push({ j: -1, loss: best });
    for (let j = model.itemStart[g]!; j < model.itemStart[g + 1]!; j++) {
      if (j === chosen || within.item[j] === 0 || (open >> model.phase[j]!) % 2 === 0) continue;
      const loss = best - relaxation.reduced[j]!;
      if (loss <= at.room) ways.push({ j, loss });
    }
    if (ways.length === 0) continue;
    ways.sort((a, b) => a.loss - b.loss || a.j - b.j);
    const change = ways.map(({ j }) => {
      use.fill(0);
      addUse(relaxation, j, { use, sign: 1 });
      addUse(relaxation, chosen, { use, sign: -1 });
      return Float64Array.from(rows.active, (r) => use[r]!);
    });
    groups.push({ group: g, item: ways.map(({ j }) => j), loss: ways.map(({ loss }) => loss), change });
  }
  return {
    groups,
    slack: Float64Array.from(rows.active, (r) => relaxation.slack[r]!),
    price: Float64Array.from(rows.active, (r) => at.price[r]!),
    room: at.room,
  };
}

/** Least room worth joining for: values are whole. */
const LEAST_ROOM = 1e-6;

/** Steps of loss by which combinations are counted. */
const STEPS = 200;

/** Number of ways to combine groups within the room, counted with losses rounded down: never too low. */
function combinations(groups: readonly GroupWays[], room: number): number {
  let count = new Float64Array(STEPS + 1);
  count[0] = 1;
  for (const { loss } of groups) {
    const next = count.slice();
    for (const each of loss) {
      const shift = Math.floor((each / room) * STEPS);
      for (let s = STEPS; s >= shift; s--) next[s]! += count[s - shift]!;
    }
    count = next;
  }
  return count.reduce((a, b) => a + b, 0);
}

/** Losses up to a smaller room only. */
const within = (groups: readonly GroupWays[], room: number): GroupWays[] => groups.map((ways) => ({ ...ways, loss: ways.loss.filter((loss) => loss <= room) }));

/**
 * Two halves with about as many combinations each.
 *
 * @param node losses and changes of use
 * @param limit most combinations of a half, and most of them within half the room: those are stored
 * @returns the halves, the largest room (up to the node's) that keeps both, and the count of combinations; room 0 when even the least does not
 */
export function halves(node: DecidedNode, limit: { readonly most: number; readonly stored: number }): { readonly sides: readonly [GroupWays[], GroupWays[]]; readonly count: number; readonly room: number } {
  const room = Math.max(node.room, LEAST_ROOM);
  const byWeight = [...node.groups].map((ways) => ({ ways, weight: ways.loss.reduce((sum, loss) => sum + 1 - loss / room, 0) }));
  byWeight.sort((a, b) => b.weight - a.weight || a.ways.group - b.ways.group);
  const sides: [GroupWays[], GroupWays[]] = [[], []];
  const total = [0, 0];
  for (const { ways, weight } of byWeight) {
    const side = total[0]! <= total[1]! ? 0 : 1;
    sides[side].push(ways);
    total[side]! += weight;
  }
  const countAt = (at: number): number => Math.max(...sides.map((groups) => combinations(within(groups, at), at)));
  const few = (at: number): boolean => (limit.most === Infinity || countAt(at) <= limit.most) && countAt(at / 2) <= limit.stored;
  if (few(room)) return { sides, count: countAt(room), room };
  if (!few(LEAST_ROOM)) return { sides, count: Infinity, room: 0 };
  let low = LEAST_ROOM;
  let high = room;
  for (let step = 0; step < 12; step++) {
    const middle = (low + high) / 2;
    if (few(middle)) low = middle;
    else high = middle;
  }
  return { sides, count: countAt(low), room: low };
}
