import fc from 'fast-check';
import type { CutPiece, CutResult } from './job.js';
import { checkLayout } from './layout-check.js';
import type { LotJob } from './lot-shop.js';
import { cutOneLot } from './one-lot.js';

/** A pane that takes the whole width of a roll of 1 m, `length_mm` of it. */
const across = (id: string, length_mm: number): CutPiece => ({ id, width_mm: 1000, length_mm, count: 1, mayRotate: false });
const job = (pieces: readonly CutPiece[], change: Partial<LotJob> = {}): LotJob => ({
  pieces,
  rolls: [{ width_mm: 1000, length_mm: 5000, stock: 1 }, { width_mm: 1000, length_mm: 10_000, price_cents: 40_000 }],
  lotOf: ['L7', null],
  elevationOf: Object.fromEntries(pieces.map((p) => [p.id, p.id.split('/')[0]!])),
  rounds: 50,
  ...change,
});
/** From where each elevation comes: rows of the job, in order. */
const rowsOf = (made: CutResult, of: LotJob): Record<string, number[]> => {
  const rows: Record<string, number[]> = {};
  for (const at of made.placements) {
    const elevation = of.elevationOf[at.piece]!;
    rows[elevation] = [...new Set([...(rows[elevation] ?? []), made.rolls[at.roll]!.offer])].sort();
  }
  return rows;
};

describe('one lot an elevation', () => {
  it('is kept where free cutting mixes lots: the stock takes the elevation it holds whole', () => {
    // 5 m in stock. South needs 6 m, west 3 m: freely, two panes of south fill the stock; whole, only west fits.
    const two = job([across('south/1', 2000), across('south/2', 2000), across('south/3', 2000), across('west/1', 1500), across('west/2', 1500)]);
    const made = cutOneLot(two);
    expect(rowsOf(made, two)).toEqual({ south: [1], west: [0] });
    expect(made).toMatchObject({ mixed: [], unplaced: [], cost_cents: 40_000, extraCost_cents: 0, freeArea_mm2: 1e7, extraArea_mm2: 0 });
    expect(checkLayout(two, made)).toEqual({ ok: true, faults: [] });
  });

  it('states its price: film in stock that holds no whole elevation stays there, and a second roll is bought', () => {
    const one = job([across('south/1', 4000), across('south/2', 4000), across('south/3', 4000)]);
    const made = cutOneLot(one);
    // Freely: 4 m from stock and 8 m from one roll of 10 m. From one lot: 12 m, two rolls.
    expect(rowsOf(made, one)).toEqual({ south: [1] });
    expect(made).toMatchObject({ mixed: [], cost_cents: 80_000, extraCost_cents: 40_000, boughtArea_mm2: 2e7, freeArea_mm2: 1e7, extraArea_mm2: 1e7 });
    expect(made.rolls.every((r) => r.source === 'bought')).toBe(true);
    expect(made.lowerBoundArea_mm2).toBe(1e7); // any cutting: 12 m less 5 m in stock is one roll
  });

  it('gives the stock to the elevations that spare most, not to the first', () => {
    // Stock of 5 m: "a" with "b" fill it, "c" alone fills only 4 m of it and would leave 11 m to buy.
    const rest = [across('a/1', 2500), across('a/2', 500), across('b/1', 2000), across('c/1', 4000), across('d/1', 6000)];
    const three = job(rest);
    const made = cutOneLot(three);
    expect(rowsOf(made, three)).toEqual({ a: [0], b: [0], c: [1], d: [1] });
    expect(made).toMatchObject({ cost_cents: 40_000, mixed: [] });
  });

  it('takes rolls of one lot together, and each roll of no known lot alone', () => {
    const pieces = [across('south/1', 2000), across('south/2', 2000)];
    const rolls = [{ width_mm: 1000, length_mm: 2500, stock: 1 }, { width_mm: 1000, length_mm: 2600, stock: 1 }, { width_mm: 1000, length_mm: 10_000, price_cents: 40_000 }];
    expect(cutOneLot(job(pieces, { rolls, lotOf: ['L7', 'L7', null] }))).toMatchObject({ cost_cents: 0, mixed: [] });
    expect(cutOneLot(job(pieces, { rolls, lotOf: ['L7', 'L8', null] }))).toMatchObject({ cost_cents: 40_000, mixed: [] });
    expect(cutOneLot(job(pieces, { rolls, lotOf: [] }))).toMatchObject({ cost_cents: 40_000, mixed: [] });
    const row = [{ width_mm: 1000, length_mm: 2500, stock: 2 }, rolls[2]!];
    expect(cutOneLot(job(pieces, { rolls: row, lotOf: ['L7'] })).cost_cents).toBe(0);
    expect(cutOneLot(job(pieces, { rolls: row, lotOf: [] })).cost_cents).toBe(40_000);
  });

  it('says what cannot be had: a pane only the stock is wide enough for, and no lot for the whole side', () => {
    const wide = { id: 'south/w', width_mm: 1400, length_mm: 900, count: 1, mayRotate: false };
    const rolls = [{ width_mm: 1500, length_mm: 1000, stock: 1 }, { width_mm: 1000, length_mm: 10_000, price_cents: 40_000 }];
    const stuck = job([wide, across('south/1', 3000), across('west/1', 3000)], { rolls });
    const made = cutOneLot(stuck);
    expect(made).toMatchObject({ mixed: ['south'], unplaced: [], cost_cents: 40_000 });
    expect(checkLayout(stuck, made).faults).toEqual([]);
  });

  it('lays such a pane on the end of a lot that holds another elevation', () => {
    // Two lots wide enough for the wide panes of "a": neither holds both, so the side is mixed; "b" is whole on one of them.
    const wide = (id: string, length_mm: number): CutPiece => ({ id, width_mm: 1400, length_mm, count: 1, mayRotate: false });
    const rolls = [{ width_mm: 1500, length_mm: 2000, stock: 1 }, { width_mm: 1500, length_mm: 1500, stock: 1 }];
    const stuck = job([wide('a/1', 1400), wide('a/2', 900), wide('b/1', 1000)], { rolls, lotOf: ['L1', 'L2'], kerf_mm: 2 });
    const made = cutOneLot(stuck);
    expect(made).toMatchObject({ mixed: ['a'], unplaced: [], boughtArea_mm2: 0 });
    expect(checkLayout(stuck, made).faults).toEqual([]);
  });

  it('changes nothing where free cutting mixes no lots', () => {
    const alone = job([across('south/1', 2000)]);
    expect(cutOneLot(alone)).toMatchObject({ mixed: [], extraArea_mm2: 0, extraCost_cents: 0, cost_cents: 0 });
    const byArea = job([across('south/1', 2000), across('south/2', 8000)], { rolls: [{ width_mm: 1000, length_mm: 20_000 }] });
    expect(cutOneLot(byArea)).toMatchObject({ mixed: [], extraArea_mm2: 0, extraCost_cents: null });
  });

  const jobs = fc.record({
    pieces: fc.array(fc.record({ side: fc.constantFrom('n', 'e', 's', 'w'), width_mm: fc.integer({ min: 300, max: 1100 }), length_mm: fc.integer({ min: 400, max: 1600 }), count: fc.integer({ min: 1, max: 3 }), mayRotate: fc.boolean() }), { minLength: 1, maxLength: 12 }),
    stock: fc.array(fc.record({ width_mm: fc.constantFrom(914.4, 1219.2), length_mm: fc.integer({ min: 600, max: 9000 }), lot: fc.constantFrom('L1', 'L2', null) }), { minLength: 1, maxLength: 4 }),
    kerf_mm: fc.constantFrom(0, 1),
  }).map(({ pieces, stock, kerf_mm }): LotJob => ({
    kerf_mm,
    rounds: 10,
    pieces: pieces.map(({ side: _, ...p }, k) => ({ id: `p${String(k)}`, ...p })),
    elevationOf: Object.fromEntries(pieces.map((p, k) => [`p${String(k)}`, p.side])),
    rolls: [...stock.map(({ width_mm, length_mm }) => ({ width_mm, length_mm, stock: 1 })), { width_mm: 1219.2, length_mm: 30_480, price_cents: 44_000 }],
    lotOf: [...stock.map((s) => s.lot), null],
  }));

  it('holds on any job that can be bought whole, with every piece once by straight cuts, and never below the bound', () => {
    fc.assert(
      fc.property(jobs, (any) => {
        const made = cutOneLot(any);
        expect(made.mixed).toEqual([]);
        expect(checkLayout(any, made).faults).toEqual([]);
        const lots = new Map<string, Set<string>>();
        for (const at of made.placements) {
          const roll = made.rolls[at.roll]!;
          const lot = roll.source === 'bought' ? 'bought' : (any.lotOf[roll.offer] ?? `roll ${String(at.roll)}`);
          lots.set(any.elevationOf[at.piece]!, (lots.get(any.elevationOf[at.piece]!) ?? new Set()).add(lot));
        }
        for (const [, all] of lots) expect(all.size).toBe(1);
        expect(made.extraArea_mm2).toBeCloseTo(made.boughtArea_mm2 - made.freeArea_mm2, 3);
      }),
      { numRuns: 30 },
    );
  });

  it('is the same whatever the order of the rows of pieces', () => {
    fc.assert(fc.property(jobs, (any) => expect(cutOneLot({ ...any, pieces: [...any.pieces].reverse() })).toEqual(cutOneLot(any))), { numRuns: 4 });
  });
});
