import fc from 'fast-check';
import { barBound } from './bar-bound.js';
import { cut } from './cut.js';
import type { CutJob, CutPiece } from './job.js';
import { checkLayout } from './layout-check.js';
import { seeded } from './random.js';
import { readyJob, type ReadyJob } from './ready-job.js';
import { widthPrices } from './width-price.js';

/** Panes of as many sizes as there are rows, some of them ordered twice, in eighths of an inch. */
function panes(rows: number, seed: number): CutPiece[] {
  const next = seeded(seed);
  const side = (from: number, to: number): number => Math.round((from + next() * (to - from)) * 8) * 3.175;
  return Array.from({ length: rows }, (_, k) => ({ id: `p${k}`, width_mm: side(14, 46), length_mm: side(20, 80), count: 1 + Math.floor(1.2 * next()), mayRotate: next() < 0.7 }));
}

const jobs = fc.record({
  pieces: fc.record({ rows: fc.integer({ min: 560, max: 640 }), seed: fc.integer({ min: 1, max: 1e6 }) }).map(({ rows, seed }) => panes(rows, seed)),
  rolls: fc.constantFrom<CutJob['rolls']>(
    [914.4, 1219.2, 1828.8].map((width_mm) => ({ width_mm, length_mm: 30_480 })),
    [1219.2, 1524].map((width_mm) => ({ width_mm })),
    [{ width_mm: 1524, length_mm: 9000, stock: 2 }, { width_mm: 1524, length_mm: 30_480, price_cents: 40_000 }, { width_mm: 1828.8, length_mm: 30_480, price_cents: 45_000 }],
  ),
  kerf_mm: fc.constantFrom(0, 1),
  rounds: fc.constant(50),
});

describe('a job of more than 500 sizes', () => {
  it('is laid with every piece once, none over another, by straight cuts, and never below its bound', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        expect(readyJob(job).types.length).toBeGreaterThan(500);
        const result = cut(job);
        expect(checkLayout(job, result).faults).toEqual([]);
        expect(result.unplaced).toEqual([]);
      }),
      { numRuns: 3 },
    );
  });

  it('is laid alike whatever the order of its rows', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const turned = cut({ ...job, pieces: [...job.pieces].reverse(), rolls: job.rolls });
        expect(turned).toEqual(cut(job));
      }),
      { numRuns: 2 },
    );
  });

  it('loses little beside the least any cutting needs: at most 5 % where some panes may not turn and film is sold by length', () => {
    const result = cut({ pieces: panes(600, 3), rolls: [36, 48, 60, 72].map((width) => ({ width_mm: width * 25.4 })) });
    expect(result.overBound).toBeLessThan(0.05);
  });
});

const ratesOf = (ready: ReadyJob): Float64Array => Float64Array.from(ready.offers, (offer) => offer.rate);

/** The dearest cross-section of an offer, copies without limit, by trying every one. */
function dearest(ready: ReadyJob, price: Float64Array, o: number): number {
  const from = (k: number, room: number): number => {
    const lie = ready.lies[k];
    if (lie === undefined) return 0;
    const without = from(k + 1, room);
    return lie.across > room ? without : Math.max(without, price[lie.type]! / lie.along + from(k, room - lie.across));
  };
  return from(0, ready.offers[o]!.width);
}

const side = fc.integer({ min: 28, max: 90 }).map((n) => n * 12.7);
const small = fc.record({
  pieces: fc.array(fc.record({ width_mm: side, length_mm: side, count: fc.integer({ min: 1, max: 30 }), mayRotate: fc.boolean() }), { minLength: 1, maxLength: 6 }).map((all) => all.map((piece, k) => ({ id: `p${k}`, ...piece }))),
  rolls: fc.subarray([914.4, 1219.2, 1524, 1828.8], { minLength: 1 }).map((widths) => widths.map((width_mm) => ({ width_mm }))),
});

describe('the bound by widths', () => {
  it('stands on prices no cross-section of any roll can beat, and is not above the bound piece by piece', () => {
    fc.assert(
      fc.property(small, (job) => {
        const ready = readyJob(job);
        if (ready.types.length === 0) return;
        const { price, bound } = widthPrices(ready, ratesOf(ready));
        ready.offers.forEach((offer, o) => expect(dearest(ready, price, o)).toBeLessThanOrEqual(offer.rate * (1 + 1e-9)));
        expect(price.reduce((sum, each, t) => sum + each * ready.types[t]!.count, 0)).toBeCloseTo(bound, 0);
        expect(bound).toBeLessThanOrEqual(barBound(ready, ratesOf(ready)).bound * (1 + 1e-6));
        expect(bound).toBeGreaterThanOrEqual(ready.types.reduce((sum, type) => sum + type.across * type.along * type.count, 0) * (1 - 1e-6));
      }),
      { numRuns: 25 },
    );
  });
});
