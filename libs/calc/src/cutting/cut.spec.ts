import fc from 'fast-check';
import { cut } from './cut.js';
import type { CutJob } from './job.js';
import { checkLayout } from './layout-check.js';

describe('whole rolls', () => {
  it('takes stock before it buys, and says what is bought', () => {
    const job: CutJob = {
      pieces: [{ id: 'a', width_mm: 900, length_mm: 1000, count: 12, mayRotate: false }],
      rolls: [{ width_mm: 914.4, length_mm: 5200, stock: 1 }, { width_mm: 914.4, length_mm: 30_480, price_cents: 20_000 }],
    };
    const result = cut(job);
    expect(checkLayout(job, result).faults).toEqual([]);
    expect(result.rolls.map((roll) => [roll.source, roll.runningLength_mm])).toEqual([['stock', 5000], ['bought', 7000]]);
    expect(result.cost_cents).toBe(20_000);
    expect(result.lowerBoundCost_cents).toBeCloseTo(20_000, 6);
  });

  it('says what the stock is too short for when nothing can be bought', () => {
    const result = cut({
      pieces: [{ id: 'a', width_mm: 900, length_mm: 1000, count: 7, mayRotate: false }],
      rolls: [{ width_mm: 914.4, length_mm: 5200, stock: true }],
    });
    expect(result.boughtArea_mm2).toBe(0);
    expect(result.overBound).toBe(0);
    expect(result.unplaced).toEqual([{ piece: 'a', count: 2, why: 'the rolls in stock are used up and no roll on offer holds it' }]);
  });
});

describe('pieces no roll can hold', () => {
  it('are set aside with the reason and, where it helps, a seam', () => {
    const result = cut({
      pieces: [
        { id: 'wide', width_mm: 2000, length_mm: 2200, count: 2, mayRotate: true },
        { id: 'long', width_mm: 800, length_mm: 40_000, count: 1, mayRotate: false },
        { id: 'fits', width_mm: 2000, length_mm: 900, count: 1, mayRotate: true },
      ],
      rolls: [{ width_mm: 1828.8, length_mm: 30_480 }],
    });
    expect(result.placements.map((at) => [at.piece, at.width_mm, at.rotated])).toEqual([['fits', 900, true]]);
    expect(result.unplaced.map((each) => [each.piece, each.count, each.why])).toEqual([
      ['long', 1, 'longer than every roll that is wide enough'],
      ['wide', 2, 'wider than every roll, either way round'],
    ]);
    expect(result.unplaced[1]?.seam).toMatchObject({ strips: 2, length_mm: 2200 });
    expect(result.unplaced[1]!.seam!.width_mm * 2).toBeGreaterThanOrEqual(2000);
    expect(result.unplaced[0]?.seam).toBeUndefined();
  });

  it('leave an empty layout, not an error', () => {
    const result = cut({ pieces: [{ id: 'a', width_mm: 10, length_mm: 10, count: 1, mayRotate: true }], rolls: [] });
    expect(result).toMatchObject({ placements: [], boughtArea_mm2: 0, lowerBoundArea_mm2: 0, overBound: 0 });
    expect(result.unplaced[0]?.why).toBe('there is no roll to cut from');
  });
});

describe('refusals name the field', () => {
  const piece = { id: 'a', width_mm: 10, length_mm: 10, count: 1, mayRotate: true };
  it.each([
    [{ pieces: [{ ...piece, count: 1.5 }], rolls: [{ width_mm: 100 }] }, /count/],
    [{ pieces: [{ ...piece, width_mm: 0 }], rolls: [{ width_mm: 100 }] }, /width_mm/],
    [{ pieces: [piece, piece], rolls: [{ width_mm: 100 }] }, /unique/],
    [{ pieces: [piece], rolls: [{ width_mm: -1 }] }, /rolls\/0\/width_mm/],
    [{ pieces: [piece], rolls: [{ width_mm: 100, stock: 1 }] }, /length_mm/],
    [{ pieces: [piece], rolls: [{ width_mm: 100, price_cents: 5 }, { width_mm: 100 }] }, /every roll/],
    [{ pieces: [piece], rolls: [{ width_mm: 100 }], kerf_mm: -1 }, /kerf_mm/],
  ] satisfies [CutJob, RegExp][])('case %#', (job, words) => {
    expect(() => cut(job)).toThrow(words);
  });
});

const size = fc.integer({ min: 8, max: 60 }).map((n) => n * 31.75);
const pieces = fc
  .array(fc.record({ width_mm: size, length_mm: fc.oneof(size, fc.double({ min: 100, max: 1900, noNaN: true })), count: fc.integer({ min: 1, max: 6 }), mayRotate: fc.boolean() }), { minLength: 1, maxLength: 8 })
  .map((all) => all.map((piece, k) => ({ id: `p${k}`, ...piece })));
const rolls = fc.array(
  fc.record({ width_mm: fc.constantFrom(914.4, 915, 1219.2, 1524, 1828.8), length_mm: fc.option(fc.constantFrom(3000, 9144, 30_480), { nil: undefined }) }),
  { minLength: 1, maxLength: 3 },
);
const jobs = fc.record({ pieces, rolls, kerf_mm: fc.constantFrom(0, 0, 1, 2.5), rounds: fc.constant(20) });

describe('any job', () => {
  it('gives a layout that the separate check finds no fault with', () => {
    fc.assert(fc.property(jobs, (job) => void expect(checkLayout(job, cut(job)).faults).toEqual([])), { numRuns: 40 });
  });

  it('buys the same whatever the order of its rows, and the same twice', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const once = cut(job);
        expect(cut(job)).toEqual(once);
        const turned = cut({ ...job, pieces: [...job.pieces].reverse() });
        expect(turned.boughtArea_mm2).toBeCloseTo(once.boughtArea_mm2, 3);
        expect(cut({ ...job, rolls: [...job.rolls].reverse() }).boughtArea_mm2).toBeCloseTo(once.boughtArea_mm2, 3);
      }),
      { numRuns: 15 },
    );
  });

  it('is never bounded lower by a piece more', () => {
    fc.assert(
      fc.property(jobs, size, (job, more_mm) => {
        const roll = { width_mm: 1828.8 };
        const less = { ...job, kerf_mm: 0, rolls: [roll, ...job.rolls.map(({ width_mm }) => ({ width_mm }))], rounds: 0 };
        const more = { ...less, pieces: [...less.pieces, { id: 'more', width_mm: more_mm, length_mm: 700, count: 1, mayRotate: false }] };
        expect(cut(more).lowerBoundArea_mm2).toBeGreaterThanOrEqual(cut(less).lowerBoundArea_mm2 * (1 - 1e-6));
      }),
      { numRuns: 40 },
    );
  });
});
