import fc from 'fast-check';
import { halves, type DecidedNode, type GroupWays } from './decided-node.js';
import { joinHalves } from './join-halves.js';

const ROWS = 2;
const change = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }));
const ways = fc.array(fc.record({ loss: fc.integer({ min: 0, max: 60 }), change }), { minLength: 1, maxLength: 3 });

const nodeOf = fc
  .record({ groups: fc.array(ways, { minLength: 1, maxLength: 7 }), slack: change, price: fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })), room: fc.integer({ min: 1, max: 150 }) })
  .map(({ groups, slack, price, room }): DecidedNode => ({
    groups: groups.map((own, group): GroupWays => {
      const sorted = [...own].sort((a, b) => a.loss - b.loss);
      return { group, item: sorted.map((_, k) => 10 * group + k), loss: sorted.map(({ loss }) => loss), change: sorted.map((way) => Float64Array.from(way.change)) };
    }),
    slack: Float64Array.from(slack),
    price: Float64Array.from(price),
    room,
  }));

/** Loss of a combination with what is left at its price; null when a limit is passed. */
function lossOf(node: DecidedNode, items: ReadonlyMap<number, number>): number | null {
  const left = [...node.slack];
  let loss = 0;
  for (const [group, item] of items) {
    const own = node.groups[group]!;
    const k = own.item.indexOf(item);
    loss += own.loss[k]!;
    for (let r = 0; r < ROWS; r++) left[r]! -= own.change[k]![r]!;
  }
  if (left.some((each) => each < 0)) return null;
  return left.reduce((sum, each, r) => sum + each * node.price[r]!, loss);
}

/** Least loss by trying every combination; null when none stays within the room. */
function leastByTrial(node: DecidedNode): number | null {
  let least: number | null = null;
  const items = new Map<number, number>();
  const walk = (g: number): void => {
    const own = node.groups[g];
    if (own === undefined) {
      const loss = lossOf(node, items);
      if (loss !== null && loss <= node.room && (least === null || loss < least)) least = loss;
      return;
    }
    walk(g + 1);
    for (const item of own.item) {
      items.set(g, item);
      walk(g + 1);
    }
    items.delete(g);
  };
  walk(0);
  return least;
}

const join = (node: DecidedNode, which: 'all' | 'stored', mostWork = Infinity) => joinHalves(node, halves(node, { most: Infinity, stored: Infinity }).sides, { expired: () => false, mostWork, which });

describe('joining two halves', () => {
  it('finds the combination of least loss that trying every one finds', () => {
    fc.assert(fc.property(nodeOf, (node) => {
      const { loss, items, whole } = join(node, 'all');
      expect(whole).toBe(true);
      expect(loss).toBe(leastByTrial(node));
      if (loss !== null) expect(lossOf(node, new Map(items))).toBe(loss);
    }), { numRuns: 500 });
  });

  it('of the stored ones alone gives combinations that keep the limits, none better than the best', () => {
    fc.assert(fc.property(nodeOf, (node) => {
      const { loss, items } = join(node, 'stored');
      if (loss === null) return;
      expect(lossOf(node, new Map(items))).toBe(loss);
      expect(loss).toBeGreaterThanOrEqual(leastByTrial(node)!);
    }), { numRuns: 200 });
  });

  it('says so when the count ends it', () => {
    const many: DecidedNode = {
      groups: Array.from({ length: 8 }, (_, group) => ({ group, item: [group], loss: [1], change: [Float64Array.of(7, 3)] })),
      slack: Float64Array.of(-1, -1), price: Float64Array.of(1, 1), room: 100,
    };
    expect(join(many, 'all', 3).whole).toBe(false);
    expect(join(many, 'all').whole).toBe(true);
  });
});

describe('two halves', () => {
  it('give up the join where even ways that lose nothing are too many to store', () => {
    const alike: DecidedNode = {
      groups: Array.from({ length: 60 }, (_, group) => ({ group, item: [group], loss: [0], change: [Float64Array.of(5)] })),
      slack: Float64Array.of(3), price: Float64Array.of(1), room: 50,
    };
    expect(halves(alike, { most: 1e6, stored: 1e5 }).room).toBe(0);
  });
});
