import { type FilmCut, type PlacedPiece, type Plan, planSentences } from '#planning';
import type { Say } from '../texts/texts.js';

/** A piece with its number in the order it comes off the roll; the number stands on cut list, label and crew sheet alike. */
export interface NumberedPiece extends PlacedPiece {
  readonly number: number;
}

/** One physical roll of a phase with the pieces cut from it, in cutting order. */
export interface RollSheet {
  readonly phase: string;
  readonly film: string;
  /** Name as in the plan. */
  readonly roll: string;
  /** The same without the phase it is cut in. */
  readonly shortName: string;
  readonly isStock: boolean;
  readonly width_mm: number;
  /** What the roll holds before it is opened in this phase; null where the plan does not say. */
  readonly length_mm: number | null;
  readonly running_mm: number;
  /** End worth keeping, 0 where it is thrown away. */
  readonly leftover_mm: number;
  readonly pieces: readonly NumberedPiece[];
}

export const shortRoll = (roll: string, phase: string): string => (roll.startsWith(`${phase} `) ? roll.slice(phase.length + 1) : roll);

/** The name of a roll in the language of the papers: names of the survey stay as they are, words of ours do not. */
export function rollText(name: string, say: Say): string {
  const stock = /^(.*) stock (\d+)$/.exec(name);
  const piece = /^piece cut for (.*)$/.exec(name);
  if (name === planSentences['note.notLaid']) return say('note.notLaid');
  if (stock !== null) return say('roll.stock', { roll: rollText(stock[1] ?? '', say), number: stock[2] ?? '' });
  return piece === null ? name : say('roll.piece', { pane: piece[1] ?? '' });
}

interface RollSize {
  readonly width_mm: number;
  readonly length_mm: number | null;
  readonly isStock: boolean;
}

function sizeOf(cut: FilmCut, roll: string, pieces: readonly PlacedPiece[]): RollSize {
  const leftover = cut.leftover.find((l) => l.roll === roll);
  const stock = cut.fromStock.find((s) => s.roll === roll);
  if (stock !== undefined) return { width_mm: stock.width_mm, length_mm: leftover === undefined ? null : stock.length_mm + leftover.length_mm, isStock: true };
  const bought = cut.bought.find((b) => shortRoll(roll, cut.phase).startsWith(`${b.roll} #`));
  if (bought !== undefined) return { width_mm: bought.width_mm, length_mm: bought.length_mm, isStock: false };
  return { width_mm: leftover?.width_mm ?? Math.max(...pieces.map((p) => p.x_mm + p.width_mm)), length_mm: null, isStock: false };
}

const natural = new Intl.Collator('en', { numeric: true });

/** The rolls of a cut list in the order of their names, each with its pieces as they come off it. */
export function rollSheets(cut: FilmCut): RollSheet[] {
  const byRoll = new Map<string, PlacedPiece[]>();
  for (const piece of cut.pieces) byRoll.set(piece.roll, [...(byRoll.get(piece.roll) ?? []), piece]);
  return [...byRoll]
    .sort(([a], [b]) => natural.compare(a, b))
    .map(([roll, laid]): RollSheet => {
      const pieces = [...laid].sort((a, b) => a.y_mm - b.y_mm || a.x_mm - b.x_mm).map((p, i): NumberedPiece => ({ ...p, number: i + 1 }));
      return {
        phase: cut.phase,
        film: cut.film,
        roll,
        shortName: shortRoll(roll, cut.phase),
        ...sizeOf(cut, roll, pieces),
        running_mm: Math.max(...pieces.map((p) => p.y_mm + p.length_mm)),
        leftover_mm: cut.leftover.find((l) => l.roll === roll)?.length_mm ?? 0,
        pieces,
      };
    });
}

/** Cuts of the plan, and of panes to be done again after the revision before. */
export const allCuts = (plan: Pick<Plan, 'cuts' | 'settled'>): readonly FilmCut[] => [...plan.cuts, ...(plan.settled?.redoCuts ?? [])];

export const allRollSheets = (plan: Plan): RollSheet[] => allCuts(plan).flatMap(rollSheets);

/** Film for panes to be done again is cut apart from its year, under the year's name and one word. */
const yearOf = (phase: string): string => phase.replace(/ redo$/, '');

/** A year as papers name it, its panes to be done again said in words. */
export const phaseText = (phase: string, say: Say): string => (yearOf(phase) === phase ? phase : say('redo.film', { phase: yearOf(phase) }));

/** Where the piece of a pane is found, by the year of its work order. */
export const pieceKey = (phase: string, pane: string): string => `${yearOf(phase)}|${pane}`;

/** Each piece with its number on its roll, by phase and pane. */
export function numberedPieces(plan: Plan): ReadonlyMap<string, NumberedPiece> {
  return new Map(allRollSheets(plan).flatMap((r) => r.pieces.map((p): [string, NumberedPiece] => [pieceKey(r.phase, p.piece), p])));
}
