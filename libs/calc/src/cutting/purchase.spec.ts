import { buyFilm, offCuts, purchaseList } from './purchase.js';
import { nearMisses } from './near-miss.js';
import { cut } from './cut.js';
import { checkLayout } from './layout-check.js';
import type { CutJob } from './job.js';

const ROLL_mm = 30_480;

describe('film is bought in whole rolls', () => {
  it('of the narrow kind where it is enough: 20 pieces of 900 × 1500 mm, worked by hand', () => {
    // 36 in holds one across: 20 a roll of 30.48 m. 72 in holds two: 10 lengths = 15 m, still a whole roll at a higher price.
    const job: CutJob = {
      pieces: [{ id: 'a', width_mm: 900, length_mm: 1500, count: 20, mayRotate: false }],
      rolls: [{ width_mm: 914.4, length_mm: ROLL_mm, price_cents: 20_000 }, { width_mm: 1828.8, length_mm: ROLL_mm, price_cents: 39_000 }],
    };
    const bought = buyFilm(job);
    expect(bought.lines).toEqual([{ offer: 0, width_mm: 914.4, widthText: '36', length_mm: ROLL_mm, count: 1, boughtLength_mm: ROLL_mm, cost_cents: 20_000 }]);
    expect(bought.cost_cents).toBe(20_000);
    expect(bought.leftovers).toEqual([]);
  });

  it('of two kinds where that is cheapest: 60 of the same pieces', () => {
    // 72 in: 40 a roll, 36 in: 20 a roll. One of each holds 60 at 59,000; three narrow ones cost 60,000, two wide ones 78,000.
    const bought = buyFilm({
      pieces: [{ id: 'a', width_mm: 900, length_mm: 1500, count: 60, mayRotate: false }],
      rolls: [{ width_mm: 914.4, length_mm: ROLL_mm, price_cents: 20_000 }, { width_mm: 1828.8, length_mm: ROLL_mm, price_cents: 39_000 }],
    });
    expect(bought.cost_cents).toBe(59_000);
    expect(bought.lines.map((line) => line.count)).toEqual([1, 1]);
    expect(bought.lowerBoundCost_cents).toBeLessThanOrEqual(59_000);
  });

  it('and what stays on the rolls is handed on', () => {
    const job: CutJob = {
      pieces: [{ id: 'a', width_mm: 900, length_mm: 1500, count: 10, mayRotate: false }],
      rolls: [{ width_mm: 914.4, length_mm: 4000, stock: 1 }, { width_mm: 914.4, length_mm: ROLL_mm, price_cents: 20_000 }],
    };
    const bought = buyFilm(job);
    expect(bought.stockUsed).toEqual([{ offer: 0, width_mm: 914.4, length_mm: 3000 }]);
    expect(bought.leftovers.map((end) => [end.source, end.length_mm])).toEqual([['bought', ROLL_mm - 12_000], ['stock', 1000]]);
    expect(offCuts(bought.layout, 1001).length).toBe(1);
    expect(checkLayout(job, bought.layout).faults).toEqual([]);
  });

  it('keeps ends of two feet and more unless told otherwise, longest first, and nothing of no length', () => {
    const row = (length_mm: number) => ({ width_mm: 914.4, length_mm, stock: 1 });
    const piece = (id: string, length_mm: number) => ({ id, width_mm: 914.4, length_mm, count: 1, mayRotate: false });
    // One piece a roll: ends of 610, 609 and 0 mm; two feet are 609.6.
    const layout = cut({ pieces: [piece('a', 1000), piece('b', 2000), piece('c', 4000)], rolls: [row(1610), row(2609), row(4000)] });
    expect(offCuts(layout).map((end) => end.length_mm)).toEqual([610]);
    expect(offCuts(layout, 0).map((end) => end.length_mm)).toEqual([610, 609]);
    expect(() => offCuts(layout, -1)).toThrow(/^keep_mm must be ≥ 0, got -1$/);
    expect(() => offCuts(layout, Number.NaN)).toThrow(RangeError);
  });

  it('says the least any purchase costs: three pieces of which a roll holds two', () => {
    const pieces = [{ id: 'a', width_mm: 900, length_mm: 1500, count: 3, mayRotate: false }];
    const bought = buyFilm({ pieces, rolls: [{ width_mm: 914.4, length_mm: 3000, price_cents: 7_000 }] });
    expect(bought).toMatchObject({ cost_cents: 14_000, unplaced: [], stockUsed: [] });
    expect(bought.lowerBoundCost_cents).toBeCloseTo(14_000, 6);
  });

  it('never without a length or a price', () => {
    const pieces = [{ id: 'a', width_mm: 900, length_mm: 1500, count: 1, mayRotate: false }];
    expect(() => buyFilm({ pieces, rolls: [{ width_mm: 914.4, price_cents: 3 }] })).toThrow(/length_mm/);
    expect(() => buyFilm({ pieces, rolls: [{ width_mm: 914.4, length_mm: 3000 }] })).toThrow(/price_cents/);
  });

  it('by length it is priced by the metre', () => {
    const job: CutJob = { pieces: [{ id: 'a', width_mm: 900, length_mm: 1500, count: 4, mayRotate: false }], rolls: [{ width_mm: 914.4, price_cents: 1000 }] };
    expect(purchaseList(job, cut(job))).toMatchObject([{ count: 1, length_mm: null, boughtLength_mm: 6000, cost_cents: 6000 }]);
  });
});

describe('near misses', () => {
  it('name pieces that a smaller allowance would put on the narrower roll', () => {
    const piece = (id: string, width_mm: number, mayRotate = false) => ({ id, width_mm, length_mm: 2000, count: 3, mayRotate });
    const rolls = [{ width_mm: 914.4 }, { width_mm: 1219.2 }];
    expect(nearMisses([piece('fits', 914.4), piece('just', 927.1), piece('far', 1000), piece('turns', 917.575, true)], rolls)).toEqual([
      { piece: 'turns', count: 3, roll_mm: 914.4, over_mm: 3.175, overText: '1/8' },
      { piece: 'just', count: 3, roll_mm: 914.4, over_mm: 12.7, overText: '1/2' },
    ]);
    expect(() => nearMisses([], rolls, -1)).toThrow(RangeError);
  });
});
