import type { CutJob, CutResult, Placement, UsedRoll } from './job.js';
import { straightCuts } from './straight-cuts.js';

/** What a check of a layout found; no faults = the layout can be cut as drawn. */
export interface LayoutCheck {
  readonly ok: boolean;
  readonly faults: readonly string[];
}

const SAME_mm = 2e-6;

/**
 * Checks a cut layout against its job, by code of its own: every piece once, true to size and turned only where it may be, inside its
 * roll, no overlap, separable by straight cuts from edge to edge with the kerf between, stock not overdrawn, totals as stated.
 *
 * @param job what was asked
 * @param result what came back
 * @returns ok, or the faults in words, at most 50
 */
export function checkLayout(job: CutJob, result: CutResult): LayoutCheck {
  const faults: string[] = [];
  const say = (fault: string): void => void (faults.length < 50 && faults.push(fault));
  everyPieceOnce(job, result, say);
  const byRoll = new Map<number, Placement[]>();
  for (const at of result.placements) {
    const laid = byRoll.get(at.roll);
    if (laid === undefined) byRoll.set(at.roll, [at]);
    else laid.push(at);
  }
  for (const index of byRoll.keys()) if (result.rolls[index] === undefined) say(`roll ${index} is not listed`);
  result.rolls.forEach((roll, index) => {
    const laid = byRoll.get(index) ?? [];
    insideRoll(roll, { laid, index, job }, say);
    noOverlap(laid, say);
    const stuck = straightCuts(laid, job.kerf_mm ?? 0);
    if (stuck !== null) say(`roll ${index}: no straight cut separates ${stuck}`);
  });
  stockHolds(job, result, say);
  totalsHold(result, say);
  return { ok: faults.length === 0, faults };
}

type Say = (fault: string) => void;

function everyPieceOnce(job: CutJob, result: CutResult, say: Say): void {
  const pieces = new Map(job.pieces.map((piece) => [piece.id, piece]));
  const seen = new Map<string, number>();
  for (const at of result.placements) {
    seen.set(at.piece, (seen.get(at.piece) ?? 0) + 1);
    const piece = pieces.get(at.piece);
    if (piece === undefined) {
      say(`piece ${at.piece} was not asked for`);
      continue;
    }
    const asIs = same(at.width_mm, piece.width_mm) && same(at.length_mm, piece.length_mm);
    const turned = same(at.width_mm, piece.length_mm) && same(at.length_mm, piece.width_mm);
    if (!asIs && !(turned && piece.mayRotate)) say(`piece ${at.piece} is laid ${at.width_mm} × ${at.length_mm} mm, not as asked`);
  }
  for (const each of result.unplaced) seen.set(each.piece, (seen.get(each.piece) ?? 0) + each.count);
  for (const piece of job.pieces) {
    const count = seen.get(piece.id) ?? 0;
    if (count !== piece.count) say(`piece ${piece.id} stands ${count} times, asked ${piece.count}`);
  }
}

function insideRoll(roll: UsedRoll, at: { readonly laid: readonly Placement[]; readonly index: number; readonly job: CutJob }, say: Say): void {
  let end = 0;
  for (const each of at.laid) {
    end = Math.max(end, each.y_mm + each.length_mm);
    if (each.x_mm < -SAME_mm || each.y_mm < -SAME_mm || each.x_mm + each.width_mm > roll.width_mm + SAME_mm) say(`piece ${each.piece} leaves roll ${at.index} at the side`);
  }
  if (end > roll.runningLength_mm + SAME_mm) say(`roll ${at.index} runs ${roll.runningLength_mm} mm, its pieces end at ${end}`);
  if (roll.length_mm !== null && end > roll.length_mm + SAME_mm) say(`roll ${at.index} is ${roll.length_mm} mm long, its pieces end at ${end}`);
  const row = at.job.rolls[roll.offer];
  if (row === undefined || row.width_mm !== roll.width_mm || (row.length_mm ?? null) !== roll.length_mm) say(`roll ${at.index} is not one of the job's rolls`);
}

function noOverlap(laid: readonly Placement[], say: Say): void {
  const sorted = [...laid].sort((a, b) => a.y_mm - b.y_mm);
  let open: Placement[] = [];
  for (const each of sorted) {
    open = open.filter((other) => other.y_mm + other.length_mm > each.y_mm + SAME_mm);
    for (const other of open) {
      if (other.x_mm + other.width_mm > each.x_mm + SAME_mm && each.x_mm + each.width_mm > other.x_mm + SAME_mm) {
        say(`pieces ${other.piece} and ${each.piece} overlap on roll ${each.roll}`);
      }
    }
    open.push(each);
  }
}

function stockHolds(job: CutJob, result: CutResult, say: Say): void {
  job.rolls.forEach((row, offer) => {
    const stock = typeof row.stock === 'number' ? row.stock : row.stock === true ? 1 : 0;
    const used = result.rolls.filter((roll) => roll.offer === offer && roll.source === 'stock').length;
    if (used > stock) say(`${used} rolls of row ${offer} are taken from stock, which holds ${stock}`);
    const bought = result.rolls.some((roll) => roll.offer === offer && roll.source === 'bought' && roll.runningLength_mm > 0);
    if (bought && stock > 0 && row.price_cents === undefined) say(`row ${offer} is stock only, yet a roll of it is bought`);
  });
}

function totalsHold(result: CutResult, say: Say): void {
  const sum = (of: (roll: UsedRoll) => number): number => result.rolls.reduce((all, roll) => all + of(roll), 0);
  for (const roll of result.rolls) {
    const pays = roll.source === 'stock' ? 0 : (roll.length_mm ?? roll.runningLength_mm);
    if (!near(roll.boughtLength_mm, pays)) say(`a roll of ${roll.width_mm} mm pays ${roll.boughtLength_mm} mm, should pay ${pays}`);
  }
  if (!near(result.boughtArea_mm2, sum((roll) => roll.boughtLength_mm * roll.width_mm))) say('boughtArea_mm2 is not the sum of the rolls');
  if (!near(result.usedArea_mm2, sum((roll) => roll.runningLength_mm * roll.width_mm))) say('usedArea_mm2 is not the sum of the rolls');
  if (!near(result.pieceArea_mm2, result.placements.reduce((all, at) => all + at.width_mm * at.length_mm, 0))) say('pieceArea_mm2 is not the sum of the pieces');
  if (result.boughtArea_mm2 < result.lowerBoundArea_mm2 * (1 - 1e-9)) say('less is bought than the lower bound');
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_mm;
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * (1 + Math.abs(b));
