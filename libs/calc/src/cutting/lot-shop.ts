import type { CutJob, CutPiece, CutResult, CutRoll } from './job.js';
import { fineTicks, SAME_ticks } from './ready-job.js';

/** A job whose pieces belong to elevations that are to be cut from one lot of film each. */
export interface LotJob extends CutJob {
  /** Elevation of each piece by piece id; a piece without one is an elevation of its own. */
  readonly elevationOf: Readonly<Record<string, string>>;
  /** Lot of each row of `rolls` that lies in stock. null or absent = not known: each roll is a lot of its own. Rolls bought for the job are one lot. */
  readonly lotOf: readonly (string | null | undefined)[];
}

/** Film of one lot in stock. */
export interface Lot {
  readonly name: string;
  readonly rolls: readonly CutRoll[];
  /** Row of the job for each of `rolls`. */
  readonly rowOf: readonly number[];
  readonly area_mm2: number;
}

/** Pieces to be cut from one lot. */
export interface Elevation {
  readonly name: string;
  readonly pieces: readonly CutPiece[];
  readonly area_mm2: number;
  /** Whether every piece fits some roll on offer. */
  readonly canBeBought: boolean;
}

/** How one part of the job is laid: `cut`, or dwellings together. */
export type LayJob = (job: CutJob) => CutResult;

const stockOf = ({ stock }: CutRoll): number => (typeof stock === 'number' ? stock : stock === true ? 1 : 0);
const areaOf = (pieces: readonly CutPiece[]): number => pieces.reduce((sum, p) => sum + p.width_mm * p.length_mm * p.count, 0);

/** Lots in stock in order of the job's rows; rolls of a row without a lot are parted. */
export function lotsOf(job: LotJob): Lot[] {
  const lots = new Map<string, { rolls: CutRoll[]; rowOf: number[] }>();
  job.rolls.forEach((roll, row) => {
    const lot = job.lotOf[row] ?? null;
    const rolls = lot === null ? Array.from({ length: stockOf(roll) }, (_, n) => ({ name: `row ${String(row)}, roll ${String(n)}`, stock: 1 })) : [{ name: `lot ${lot}`, stock: stockOf(roll) }];
    for (const { name, stock } of rolls.filter((each) => each.stock > 0)) {
      const at = lots.get(name) ?? { rolls: [], rowOf: [] };
      at.rolls.push({ width_mm: roll.width_mm, length_mm: roll.length_mm, stock });
      at.rowOf.push(row);
      lots.set(name, at);
    }
  });
  return [...lots].map(([name, { rolls, rowOf }]) => ({ name, rolls, rowOf, area_mm2: rolls.reduce((sum, r) => sum + r.width_mm * (r.length_mm ?? 0) * stockOf(r), 0) }));
}

/** Rows rolls can be bought of, without their stock. */
export function onOffer(job: CutJob): { readonly rolls: CutRoll[]; readonly rowOf: number[] } {
  const rows = job.rolls.map((roll, row) => ({ roll, row })).filter(({ roll }) => roll.stock === undefined || roll.stock === false || roll.price_cents !== undefined);
  return { rolls: rows.map(({ roll }) => ({ width_mm: roll.width_mm, length_mm: roll.length_mm, price_cents: roll.price_cents })), rowOf: rows.map(({ row }) => row) };
}

/** Whether a piece fits one of the rolls, either way round where it may turn. */
export function fitsOne(piece: CutPiece, rolls: readonly CutRoll[]): boolean {
  const holds = (across: number, along: number): boolean =>
    rolls.some((r) => fineTicks(across) <= fineTicks(r.width_mm) + SAME_ticks && fineTicks(along) <= (r.length_mm === undefined ? Infinity : fineTicks(r.length_mm)) + SAME_ticks);
  return holds(piece.width_mm, piece.length_mm) || (piece.mayRotate && holds(piece.length_mm, piece.width_mm));
}

/** Elevations of the pieces given, by name. */
export function elevationsOf(job: LotJob, pieces: readonly CutPiece[]): Elevation[] {
  const offers = onOffer(job).rolls;
  const byName = new Map<string, CutPiece[]>();
  for (const piece of pieces) {
    const name = job.elevationOf[piece.id] ?? `piece ${piece.id}`;
    byName.set(name, [...(byName.get(name) ?? []), piece]);
  }
  return [...byName]
    .map(([name, own]) => ({ name, pieces: own, area_mm2: areaOf(own), canBeBought: own.every((p) => fitsOne(p, offers)) }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}
