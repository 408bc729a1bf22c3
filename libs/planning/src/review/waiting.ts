import { grouped, sortedBy } from '../grouped.js';
import type { FilmOption } from '../options/option.js';
import type { WaitingItem } from '../plan/plan.js';

/** The value of an option where it counts: in the plan's view, in the earliest phase its owner has. */
export type ValueOf = (option: FilmOption) => number;

function bestOf(options: readonly FilmOption[], valueOf: ValueOf): { readonly option: FilmOption; readonly value: number } | null {
  let best: { option: FilmOption; value: number } | null = null;
  for (const option of options) {
    const value = valueOf(option);
    if (best === null || value > best.value || (value === best.value && option.id < best.option.id)) best = { option, value };
  }
  return best;
}

interface Behind {
  readonly letter: string;
  readonly option: FilmOption;
  readonly value: number;
}

/** Best waiting option of a dwelling and what it is worth above the best that need not wait; one row for each letter it waits for. */
function behindLetters(options: readonly FilmOption[], valueOf: ValueOf): Behind[] {
  const waits = bestOf(options.filter((o) => o.waitsFor.length > 0), valueOf);
  if (waits === null) return [];
  const ready = Math.max(0, bestOf(options.filter((o) => o.waitsFor.length === 0), valueOf)?.value ?? 0);
  return waits.option.waitsFor.map((letter) => ({ letter, option: waits.option, value: Math.max(0, waits.value - ready) }));
}

/**
 * What waits behind each letter or test: dwellings, panes, cost and value above what can be done without it. An option that waits for two
 * letters shows its value behind both; the rows are not to be added up.
 */
export function waitingItems(options: readonly FilmOption[], valueOf: ValueOf): WaitingItem[] {
  const behind = [...grouped(options, (o) => o.dwelling).values()].flatMap((ofDwelling) => behindLetters(ofDwelling, valueOf));
  const items = [...grouped(behind, (b) => b.letter)].map(([letter, rows]): WaitingItem => {
    const sum = (part: (b: Behind) => number): number => rows.reduce((total, row) => total + part(row), 0);
    return {
      building: rows[0]!.option.building,
      subject: letter,
      kind: letter.slice(letter.indexOf(': ') + 2),
      state: 'no date',
      dwellings: rows.length,
      panes: sum((r) => r.option.paneCount),
      cost_cents: Math.round(sum((r) => r.option.cost.total_cents)),
      value_cents: Math.round(sum((r) => r.value)),
      yearlyCooling_cents: Math.round(sum((r) => r.option.yearlyCooling_cents)),
      reasons: [...new Set(rows.flatMap((r) => r.option.waitsFor))].sort(),
    };
  });
  return sortedBy(items, (i) => i.subject).sort((a, b) => b.value_cents - a.value_cents);
}
