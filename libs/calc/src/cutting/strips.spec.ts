import { plainGuillotine, plainShelves, type Box } from '../../../../test/reference/cutting-plain.js';
import { strips, type Strip } from '../../../../test/reference/cutting-strips.js';
import { cut } from './cut.js';
import type { CutJob } from './job.js';
import { checkLayout } from './layout-check.js';

const jobOf = (strip: Strip): CutJob => ({
  pieces: strip.items.map(([width_mm, length_mm, count], k) => ({ id: `p${k}`, width_mm, length_mm, count, mayRotate: false })),
  rolls: [{ width_mm: strip.width }],
  rounds: 250,
});
const boxesOf = (strip: Strip): Box[] => strip.items.flatMap(([w, h, n]) => Array.from({ length: n }, (): Box => [w, h]));

describe('published strips, orientation kept', () => {
  const over = { ours: 0, shelf: 0, guillotine: 0 };

  it.each(strips.rows)('$place: no longer than either plain pass, no shorter than the optimum, and it can be cut', ({ given, expect: wanted }) => {
    const job = jobOf(given);
    const result = cut(job);
    const height = result.boughtArea_mm2 / given.width;
    const boxes = boxesOf(given);
    const shelf = plainShelves(given.width, boxes);
    const guillotine = plainGuillotine(given.width, boxes);
    expect(checkLayout(job, result).faults).toEqual([]);
    expect(height).toBeLessThanOrEqual(Math.min(shelf, guillotine) + 1e-9);
    expect(height).toBeGreaterThanOrEqual(wanted.optimum - 1e-9);
    expect(result.lowerBoundArea_mm2).toBeLessThanOrEqual(given.width * wanted.optimum * (1 + 1e-9));
    over.ours += height / wanted.optimum - 1;
    over.shelf += shelf / wanted.optimum - 1;
    over.guillotine += guillotine / wanted.optimum - 1;
  });

  it('in the mean well below both', () => {
    expect(over.ours).toBeLessThan(0.6 * over.guillotine);
    expect(over.ours).toBeLessThan(over.shelf);
  });
});
