import fc from 'fast-check';
import { cut } from './cut.js';
import type { CutJob } from './job.js';
import { checkLayout } from './layout-check.js';

type Box = readonly [width: number, length: number];
type Rect = readonly [x: number, y: number, w: number, h: number];

/** Whether straight cuts free all rectangles: tried at every edge. */
function freed(all: readonly Rect[]): boolean {
  if (all.length <= 1) return true;
  return ([0, 1] as const).some((axis) =>
    all.some((r) => {
      const at = r[axis] + r[axis === 0 ? 2 : 3];
      const before = all.filter((o) => o[axis] + o[axis === 0 ? 2 : 3] <= at);
      const after = all.filter((o) => o[axis] >= at);
      return before.length > 0 && after.length > 0 && before.length + after.length === all.length && freed(before) && freed(after);
    }),
  );
}

/** Length of a strip filled in the order given, each box as low and then as far left as it goes; Infinity where a box is too wide or a hole is enclosed. */
function stripLength(order: readonly Box[], width: number): number {
  const laid: Rect[] = [];
  for (const [w, h] of order) {
    if (w > width) return Infinity;
    const ys = [0, ...laid.map((r) => r[1] + r[3])].sort((a, b) => a - b);
    const xs = [0, ...laid.map((r) => r[0] + r[2])].sort((a, b) => a - b);
    const free = (x: number, y: number): boolean => x + w <= width && !laid.some((r) => r[0] < x + w && x < r[0] + r[2] && r[1] < y + h && y < r[1] + r[3]);
    const y = ys.find((each) => xs.some((x) => free(x, each)))!;
    laid.push([xs.find((x) => free(x, y))!, y, w, h]);
  }
  return freed(laid) ? Math.max(...laid.map((r) => r[1] + r[3])) : Infinity;
}

/** The shortest strip over every order and way round. */
function shortest(pieces: CutJob['pieces'], width: number): number {
  const from = (left: CutJob['pieces'], order: readonly Box[]): number =>
    left.length === 0
      ? stripLength(order, width)
      : Math.min(...left.map((p) => Math.min(...waysOf(p).map((way) => from(left.filter((other) => other !== p), [...order, way])))));
  return from(pieces, []);
}

const waysOf = (p: CutJob['pieces'][number]): Box[] => (p.mayRotate ? [[p.width_mm, p.length_mm], [p.length_mm, p.width_mm]] : [[p.width_mm, p.length_mm]]);

/** The least area over every way of sharing the pieces out to rolls sold by length. */
function leastArea(pieces: CutJob['pieces'], widths: readonly number[]): number {
  const [width, ...others] = widths;
  if (width === undefined) return pieces.length === 0 ? 0 : Infinity;
  let least = Infinity;
  for (let mask = 0; mask < 2 ** pieces.length; mask++) {
    const own = pieces.filter((_, k) => ((mask >> k) & 1) === 1);
    const length = own.length === 0 ? 0 : shortest(own, width);
    if (Number.isFinite(length)) least = Math.min(least, width * length + leastArea(pieces.filter((p) => !own.includes(p)), others));
  }
  return least;
}

const side = fc.integer({ min: 2, max: 9 }).map((n) => n * 100);
const jobs = fc.record({
  pieces: fc.array(fc.record({ width_mm: side, length_mm: side, mayRotate: fc.boolean() }), { minLength: 1, maxLength: 4 }).map((all) => all.map((p, k) => ({ id: `p${String(k)}`, count: 1, ...p }))),
  rolls: fc.subarray([900, 1100, 1300], { minLength: 1, maxLength: 2 }).map((widths) => widths.map((width_mm) => ({ width_mm }))),
});

describe('jobs of a few pieces', () => {
  it('are bounded by no more than the best of every order tried, and cost at most a tenth more than it', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const result = cut(job);
        expect(checkLayout(job, result).faults).toEqual([]);
        expect(result.unplaced).toEqual([]);
        const least = leastArea(job.pieces, job.rolls.map((r) => r.width_mm));
        expect(result.lowerBoundArea_mm2).toBeLessThanOrEqual(least * (1 + 1e-9));
        expect(result.boughtArea_mm2).toBeLessThanOrEqual(least * 1.101);
      }),
      { numRuns: 25, seed: 7 },
    );
  });

  it('stand in columns where that is shorter than shelves: two of 700 × 300 and the cut between them beside one of 300 × 600', () => {
    const job: CutJob = { pieces: [{ id: 'a', width_mm: 700, length_mm: 300, count: 2, mayRotate: false }, { id: 'b', width_mm: 300, length_mm: 600, count: 1, mayRotate: false }], rolls: [{ width_mm: 1200 }], kerf_mm: 12 };
    const result = cut(job);
    expect(result.boughtArea_mm2).toBeCloseTo(1200 * 612, 3); // shelves: 912
    expect(checkLayout(job, result).faults).toEqual([]);
  });

  it('do so on the cheapest of several kinds of roll: 500 and 600 × 200 on one another beside 300 × 300', () => {
    const piece = (id: string, width_mm: number, length_mm: number) => ({ id, width_mm, length_mm, count: 1, mayRotate: false });
    const job: CutJob = { pieces: [piece('a', 500, 200), piece('b', 300, 300), piece('c', 600, 200)], rolls: [{ width_mm: 1100, price_cents: 864 }, { width_mm: 1300, price_cents: 513 }] };
    expect(cut(job).cost_cents).toBeCloseTo(513 * 0.4, 6); // shelves: 0.5 m
  });
});
