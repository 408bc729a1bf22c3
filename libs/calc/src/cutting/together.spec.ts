import fc from 'fast-check';
import type { CutPiece } from './job.js';
import { checkLayout } from './layout-check.js';
import { cutTogether, type TogetherJob } from './together.js';

const dwellings = (n: number): { pieces: CutPiece[]; groupOf: Record<string, string> } => {
  const pieces = Array.from({ length: n * 2 }, (_, k) => ({ id: `d${Math.floor(k / 2)}/${k % 2}`, width_mm: k % 2 === 0 ? 700 : 450, length_mm: k % 2 === 0 ? 1300 : 900, count: 1 + (k % 3), mayRotate: false }));
  return { pieces, groupOf: Object.fromEntries(pieces.map((piece) => [piece.id, piece.id.split('/')[0]!])) };
};

/** From where to where each group lies on its roll. */
function spans(job: TogetherJob, result: ReturnType<typeof cutTogether>): Map<string, { rolls: Set<number>; from: number; to: number }> {
  const all = new Map<string, { rolls: Set<number>; from: number; to: number }>();
  for (const at of result.placements) {
    const group = job.groupOf[at.piece]!;
    const span = all.get(group) ?? { rolls: new Set<number>(), from: Infinity, to: -Infinity };
    span.rolls.add(at.roll);
    span.from = Math.min(span.from, at.y_mm);
    span.to = Math.max(span.to, at.y_mm + at.length_mm);
    all.set(group, span);
  }
  return all;
}

describe('groups kept together', () => {
  it('lie on one stretch of one roll each, apart from each other, and the layout passes the check', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.constantFrom(undefined, 9000, 30_480), (n, length_mm) => {
        const job: TogetherJob = { ...dwellings(n), rolls: [{ width_mm: 914.4, length_mm }, { width_mm: 1524, length_mm }], rounds: 20 };
        const result = cutTogether(job);
        expect(checkLayout(job, result).faults).toEqual([]);
        const all = [...spans(job, result)];
        for (const [, span] of all) expect(span.rolls.size).toBe(1);
        for (const [a, one] of all) for (const [b, two] of all) if (a !== b && [...one.rolls][0] === [...two.rolls][0]) expect(one.to <= two.from + 1e-6 || two.to <= one.from + 1e-6).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  it('follow the crew along the roll', () => {
    const crewOrder = ['d2', 'd0', 'd3', 'd1'];
    const job: TogetherJob = { ...dwellings(4), rolls: [{ width_mm: 1524, length_mm: 30_480 }], crewOrder };
    const result = cutTogether(job);
    const found = [...spans(job, result)].sort(([, a], [, b]) => a.from - b.from).map(([group]) => group);
    expect(found).toEqual(crewOrder);
    expect(checkLayout(job, result).faults).toEqual([]);
  });

  it('show what the rule costs: two lone halves that would share a width', () => {
    const piece = { width_mm: 457.2, length_mm: 1000, count: 1, mayRotate: false };
    const job: TogetherJob = { pieces: [{ id: 'a', ...piece }, { id: 'b', ...piece }], rolls: [{ width_mm: 914.4 }], groupOf: { a: 'one', b: 'two' } };
    const result = cutTogether(job);
    expect(result.pooledArea_mm2).toBeCloseTo(914.4 * 1000, 6);
    expect(result.extraArea_mm2).toBeCloseTo(914.4 * 1000, 6);
  });
});
