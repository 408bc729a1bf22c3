import type { Roll, SiteRecord } from '#calc';
import { sortedBy } from '../grouped.js';
import type { Plan } from '../plan/plan.js';
import type { FilmCut } from '../rolls/cut-types.js';
import type { OpenedFilmRoll } from '../rolls/cut-types.js';
import type { StockRoll } from '../rolls/cut-list.js';

/** Shorter ends are thrown away: common practice, no source. */
const WORTH_KEEPING_mm = 300;

/** How far a roll was run off: to the end of every piece begun before the last cut. */
export function runOff_mm(cut: Pick<FilmCut, 'pieces'>, roll: string, cutPanes: ReadonlySet<string>): number {
  const own = cut.pieces.filter((p) => p.roll === roll).sort((a, b) => a.y_mm - b.y_mm);
  let line = Math.max(0, ...own.filter((p) => cutPanes.has(p.piece)).map((p) => p.y_mm + p.length_mm));
  for (const p of own) if (p.y_mm < line - 1e-6) line = Math.max(line, p.y_mm + p.length_mm);
  return line;
}

/** Film the records say was run off beyond what the pieces need, by film and width; taken off the longest end. */
function lessOveruse(left: StockRoll[], records: readonly SiteRecord[], needed: ReadonlyMap<string, number>): StockRoll[] {
  const used = new Map<string, number>();
  for (const r of records) {
    if (r.kind !== 'film-used' || r.film === null || r.rollLength_mm === null || r.rollWidth_mm === null) continue;
    const key = `${r.film}|${String(Math.round(r.rollWidth_mm))}`;
    used.set(key, (used.get(key) ?? 0) + r.rollLength_mm);
  }
  let now = left;
  for (const [key, length_mm] of used) {
    const over_mm = length_mm - (needed.get(key) ?? 0);
    const longest = sortedBy(now.filter((s) => `${s.film}|${String(Math.round(s.width_mm))}` === key), (s) => String(1e9 - Math.round(s.length_mm)).padStart(12, '0'))[0];
    if (over_mm > 0 && longest !== undefined) now = now.map((s) => (s === longest ? { ...s, length_mm: Math.max(0, s.length_mm - over_mm) } : s));
  }
  return now;
}

const isBegun = (cut: FilmCut, phases: ReadonlySet<string>): boolean => phases.has(cut.phase);

/** What is left of the rolls of phases in which work was done: they are bought, and cut as far as the panes done needed. */
export function rollsLeft(plan: Pick<Plan, 'cuts'>, of: { readonly phases: ReadonlySet<string>; readonly cutPanes: ReadonlySet<string>; readonly records: readonly SiteRecord[] }): { readonly left: StockRoll[]; readonly opened: ReadonlySet<string> } {
  const needed = new Map<string, number>();
  const left: StockRoll[] = [];
  const opened = new Set<string>();
  for (const cut of plan.cuts.filter((c) => isBegun(c, of.phases))) {
    for (const roll of cut.rolls) {
      const line = runOff_mm(cut, roll.roll, of.cutPanes);
      const key = `${cut.film}|${String(Math.round(roll.width_mm))}`;
      needed.set(key, (needed.get(key) ?? 0) + line);
      opened.add(roll.roll);
      left.push(endOf(roll, cut.film, line), ...inHand(cut, { roll, line, cutPanes: of.cutPanes }));
    }
  }
  return { opened, left: lessOveruse(left, of.records, needed).filter((s) => s.length_mm >= WORTH_KEEPING_mm) };
}

/** Pieces that came off the roll before the last cut and hang on no pane yet: each is stock of its own size. */
function inHand(cut: FilmCut, at: { readonly roll: OpenedFilmRoll; readonly line: number; readonly cutPanes: ReadonlySet<string> }): StockRoll[] {
  const before = cut.pieces.filter((p) => p.roll === at.roll.roll && p.y_mm < at.line - 1e-6 && !at.cutPanes.has(p.piece));
  return before.map((p): StockRoll => ({ roll: `piece cut for ${p.piece}`, film: cut.film, width_mm: p.width_mm, length_mm: p.length_mm, lot: at.roll.lot }));
}

const endOf = (roll: OpenedFilmRoll, film: string, line_mm: number): StockRoll => ({ roll: roll.roll, film, width_mm: roll.width_mm, length_mm: roll.length_mm - line_mm, lot: roll.lot });

/** Rolls of the portfolio with the store room as it is now: what was opened is replaced by what is left of it. */
export function rollsNow(rolls: readonly Roll[], of: { readonly left: readonly StockRoll[]; readonly opened: ReadonlySet<string> }): Roll[] {
  const named = (r: Roll, i: number): string => `${r.id} stock ${String(i + 1)}`;
  const untouched = rolls.map((r): Roll => ({ ...r, inStock: Array.from({ length: r.inStock }, (_, i) => named(r, i)).filter((n) => !of.opened.has(n)).length }));
  const ends = of.left.map((s): Roll => ({ id: s.roll, film: s.film, width: { entered: String(s.width_mm), mm: s.width_mm }, length_mm: s.length_mm, price_cents: null, inStock: 1, lot: s.lot, inventoryRow: { file: 'left over', row: 0 } }));
  return sortedBy([...untouched.filter((r) => r.inStock > 0 || r.price_cents !== null), ...ends], (r) => r.id);
}
