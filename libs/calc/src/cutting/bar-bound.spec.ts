import fc from 'fast-check';
import { barBound } from './bar-bound.js';
import { readyJob, type ReadyJob } from './ready-job.js';

const ratesOf = (ready: ReadyJob): Float64Array => Float64Array.from(ready.offers, (offer) => offer.rate);

/** The dearest cross-section of an offer by trying every one: the plain twin of the knapsack. */
function dearest(ready: ReadyJob, price: Float64Array, o: number): number {
  const used = new Int32Array(ready.types.length);
  const from = (k: number, room: number): number => {
    if (k === ready.lies.length) return 0;
    const lie = ready.lies[k]!;
    let best = from(k + 1, room);
    if (lie.across <= room && used[lie.type]! < ready.types[lie.type]!.count && lie.along <= ready.offers[o]!.length) {
      used[lie.type]! += 1;
      best = Math.max(best, price[lie.type]! / lie.along + from(k, room - lie.across));
      used[lie.type]! -= 1;
    }
    return best;
  };
  return from(0, ready.offers[o]!.width);
}

const side = fc.integer({ min: 24, max: 90 }).map((n) => n * 12.7);
const jobs = fc.record({
  pieces: fc.array(fc.record({ width_mm: side, length_mm: side, count: fc.integer({ min: 1, max: 4 }), mayRotate: fc.boolean() }), { minLength: 1, maxLength: 5 }).map((all) => all.map((piece, k) => ({ id: `p${k}`, ...piece }))),
  rolls: fc.subarray([914.4, 1219.2, 1524, 1828.8], { minLength: 1 }).map((widths) => widths.map((width_mm) => ({ width_mm }))),
});

describe('the bound for any cutting', () => {
  it('stands on prices that no cross-section of any roll can beat', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const ready = readyJob(job);
        const { price, bound } = barBound(ready, ratesOf(ready));
        expect(price.reduce((sum, each, t) => sum + each * ready.types[t]!.count, 0)).toBeCloseTo(bound, 0);
        ready.offers.forEach((offer, o) => expect(dearest(ready, price, o)).toBeLessThanOrEqual(offer.rate * (1 + 1e-9)));
        expect(bound).toBeGreaterThanOrEqual(ready.types.reduce((sum, type) => sum + type.across * type.along * type.count, 0) * (1 - 1e-6));
      }),
      { numRuns: 60 },
    );
  });

  it('adds up pieces that lie alone: one that is wider than half the only roll takes its whole width', () => {
    const ready = readyJob({ pieces: [{ id: 'a', width_mm: 500, length_mm: 700, count: 3, mayRotate: false }], rolls: [{ width_mm: 914.4 }] });
    expect(barBound(ready, ratesOf(ready)).bound / 320 ** 2).toBeCloseTo(914.4 * 700 * 3, 0);
  });

  it('takes off what the stock can give', () => {
    const pieces = [{ id: 'a', width_mm: 900, length_mm: 1000, count: 10, mayRotate: false }];
    const ready = readyJob({ pieces, rolls: [{ width_mm: 914.4, length_mm: 4000, stock: 1 }, { width_mm: 914.4 }] });
    expect(barBound(ready, ratesOf(ready)).bound / 320 ** 2).toBeCloseTo(914.4 * 6000, 0);
  });
});
