import type { CutJob, CutResult, Placement, UsedRoll } from './job.js';
import { fineTicks } from './ready-job.js';

/** A layout of some of a job's pieces on some of its rolls. */
export interface PartLayout {
  readonly result: CutResult;
  /** Row of the whole job for each row of the part. */
  readonly rowOf: readonly number[];
}

/** Rolls of a layout with the pieces on each. */
export interface LaidRoll {
  readonly roll: UsedRoll;
  readonly laid: readonly Placement[];
}

/** The rolls of a part, each with its pieces, named by the rows of the whole job. */
export function laidRolls({ result, rowOf }: PartLayout): LaidRoll[] {
  const laid = result.rolls.map((): Placement[] => []);
  for (const at of result.placements) laid[at.roll]!.push(at);
  return result.rolls.map((roll, r) => ({ roll: { ...roll, offer: rowOf[roll.offer]! }, laid: laid[r]! }));
}

/**
 * A roll that is cut from further: pieces laid on its end follow those on it after one more cut.
 *
 * @param before the roll as it was cut
 * @param end its uncut end as a roll of its own, with what is laid there
 */
export function continued(before: LaidRoll, end: LaidRoll, kerf_mm: number): LaidRoll {
  const from_mm = before.roll.runningLength_mm + kerf_mm;
  const roll = { ...before.roll, runningLength_mm: from_mm + end.roll.runningLength_mm, leftLength_mm: end.roll.leftLength_mm };
  return { roll, laid: [...before.laid, ...end.laid.map((at) => ({ ...at, y_mm: at.y_mm + from_mm }))] };
}

/** Rolls in one list, in the order of the job's rows, stock of a row first. */
export function joined(rolls: readonly LaidRoll[]): { readonly rolls: UsedRoll[]; readonly placements: Placement[] } {
  const rank = ({ roll }: LaidRoll): number => 2 * roll.offer + (roll.source === 'stock' ? 0 : 1);
  const ordered = [...rolls].sort((a, b) => rank(a) - rank(b));
  return { rolls: ordered.map(({ roll }) => roll), placements: ordered.flatMap(({ laid }, index) => laid.map((at) => ({ ...at, roll: index }))) };
}

/** The uncut ends of stock: rolls not begun and what is left of those that were, one row each; `begun` = place of the roll in `used`. */
export function stockEnds(job: CutJob, used: readonly LaidRoll[]): { readonly row: number; readonly width_mm: number; readonly length_mm: number; readonly begun: number | null }[] {
  const begun = used.flatMap(({ roll }, at) => (roll.source === 'stock' && fineTicks(roll.leftLength_mm) > 0 ? [{ row: roll.offer, width_mm: roll.width_mm, length_mm: roll.leftLength_mm, begun: at }] : []));
  const whole = job.rolls.flatMap(({ width_mm, length_mm, stock }, row) => {
    const lie = (typeof stock === 'number' ? stock : stock === true ? 1 : 0) - used.filter(({ roll }) => roll.source === 'stock' && roll.offer === row).length;
    return Array.from({ length: Math.max(0, lie) }, () => ({ row, width_mm, length_mm: length_mm ?? 0, begun: null }));
  });
  return [...begun, ...whole];
}
