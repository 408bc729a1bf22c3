import { SAME_ticks, type Lie, type PieceType, type ReadyJob } from './ready-job.js';

/** A type, or the mean of several, with the counts of all of them. */
type Size = Pick<PieceType, 'across' | 'along' | 'mayRotate' | 'count'>;

/**
 * The job with its sizes drawn together to few: pieces that may turn by both sides, others by their width alone, since only the
 * sum of their lengths matters to a cross-section.
 *
 * @param most groups at most for each of the two kinds
 * @returns a job of mean sizes: a stand-in to find prices with, not one to cut from
 */
export function grouped(ready: ReadyJob, most: number): ReadyJob {
  const turning = ready.types.filter((type) => type.mayRotate);
  const fixed = ready.types.filter((type) => !type.mayRotate);
  const types = [...parted(turning, most, true), ...parted(fixed, most, false)].map((sizes): PieceType => ({ ...mean(sizes), owners: [] }));
  return { ...ready, types, lies: types.flatMap((type, t) => liesOf(ready, type, t)) };
}

function liesOf(ready: ReadyJob, type: PieceType, t: number): Lie[] {
  const lies: Lie[] = [{ type: t, rotated: false, across: type.across, along: type.along }];
  if (type.mayRotate) lies.push({ type: t, rotated: true, across: type.along, along: type.across });
  return lies.filter((lie) => ready.offers.some((offer) => lie.across <= offer.width + SAME_ticks && lie.along <= offer.length + SAME_ticks));
}

/** Halves the widest-spread group again and again. */
function parted(sizes: readonly Size[], most: number, bothSides: boolean): Size[][] {
  const done: Size[][] = [];
  let open = sizes.length > 0 ? [[...sizes]] : [];
  while (open.length > 0 && done.length + open.length < most) {
    const halves = open.flatMap((group) => {
      const sides = spread(group, bothSides);
      if (sides.width <= 0 && sides.length <= 0) {
        done.push(group);
        return [];
      }
      const key = (size: Size): number => (sides.width >= sides.length ? size.across : size.along);
      group.sort((a, b) => key(a) - key(b));
      return [group.slice(0, group.length >> 1), group.slice(group.length >> 1)];
    });
    open = halves;
  }
  return [...done, ...open];
}

function spread(group: readonly Size[], bothSides: boolean): { readonly width: number; readonly length: number } {
  const of = (side: (size: Size) => number): number => group.reduce((most, size) => Math.max(most, side(size)), 0) / group.reduce((least, size) => Math.min(least, side(size)), Infinity) - 1;
  return { width: of((size) => size.across), length: bothSides ? of((size) => size.along) : 0 };
}

/** Mean width by length cut, mean length by pieces; where only lengths add up, as many pieces of the mean length as make their sum. */
function mean(sizes: readonly Size[]): Size {
  const count = sizes.reduce((sum, size) => sum + size.count, 0);
  const along = sizes.reduce((sum, size) => sum + size.count * size.along, 0);
  const area = sizes.reduce((sum, size) => sum + size.count * size.along * size.across, 0);
  return { across: area / along, along: along / count, mayRotate: sizes[0]!.mayRotate, count };
}
