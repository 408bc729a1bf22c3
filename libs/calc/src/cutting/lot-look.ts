import type { CutResult } from './job.js';
import type { LotJob } from './lot-shop.js';

/** Lot of each roll of a layout. */
function lotNames(job: LotJob, { rolls }: Pick<CutResult, 'rolls'>): string[] {
  return rolls.map((roll, r) => (roll.source === 'bought' ? 'bought' : typeof job.lotOf[roll.offer] === 'string' ? `lot ${job.lotOf[roll.offer]!}` : `roll ${String(r)}`));
}

/** Elevations of a layout whose pieces come from more than one lot, in order of name. */
export function mixedIn(job: LotJob, made: Pick<CutResult, 'rolls' | 'placements'>): string[] {
  const names = lotNames(job, made);
  const lots = new Map<string, Set<string>>();
  for (const at of made.placements) {
    const elevation = job.elevationOf[at.piece] ?? `piece ${at.piece}`;
    lots.set(elevation, (lots.get(elevation) ?? new Set<string>()).add(names[at.roll]!));
  }
  return [...lots].filter(([, all]) => all.size > 1).map(([elevation]) => elevation).sort();
}

/** Piece area a layout takes from stock, by elevation, mm². */
export function fromStock(job: LotJob, free: Pick<CutResult, 'rolls' | 'placements'>): Map<string, number> {
  const area = new Map<string, number>();
  for (const at of free.placements) {
    if (free.rolls[at.roll]!.source !== 'stock') continue;
    const elevation = job.elevationOf[at.piece] ?? `piece ${at.piece}`;
    area.set(elevation, (area.get(elevation) ?? 0) + at.width_mm * at.length_mm);
  }
  return area;
}
