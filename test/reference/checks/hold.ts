import { isMiss, keyOf, type Check } from './check.js';

const LONG = 60;

/** Holds a check to its tolerance: every figure within it, but for the misses named with a reason, and those must still miss. */
export function hold(check: Check): void {
  const { rows, of, source } = check.table;
  const wrong = (index: number): unknown[] => {
    const figures = check.row(index);
    if (figures.length === 0) throw new Error(`row ${index + 1} of ${check.title} compares nothing`);
    if (check.isReport) return figures.filter(({ off }) => Number.isNaN(off));
    return figures.filter((figure) => {
      const known = check.misses[keyOf(figure)];
      return known === undefined ? isMiss(figure) : !isMiss(figure) || figure.off > known.most;
    });
  };
  (check.isHere() ? describe : describe.skip)(`${of} against ${source}: ${check.title}`, () => {
    if (rows.length > LONG) it(`all ${rows.length} rows`, () => expect(rows.flatMap((_, index) => wrong(index))).toEqual([]));
    else it.each(rows.map(({ place }, index) => [place, index] as const))('%s', (_, index) => expect(wrong(index)).toEqual([]));
  });
}
