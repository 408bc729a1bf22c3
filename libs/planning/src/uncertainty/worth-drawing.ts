import { grouped, sortedBy } from '../grouped.js';
import type { FilmOption } from '../options/option.js';

/** Options of a dwelling drawn at most, beside the one the plan takes. */
const MOST = 5;

/**
 * Options of each dwelling that some draw may choose: those no other of the dwelling beats in cost and value at once, best value first, and
 * those the plan has taken. Options that wait for a letter stand in no phase and are left out.
 */
export function worthDrawing(options: readonly FilmOption[], of: { readonly taken: ReadonlySet<string>; readonly valueOf: (option: FilmOption) => number }): FilmOption[][] {
  const open = options.filter((o) => o.waitsFor.length === 0 || of.taken.has(o.id));
  return [...grouped(sortedBy(open, (o) => o.id), (o) => o.dwelling).values()].map((ofDwelling) => {
    const byCost = ofDwelling.map((option) => ({ option, value: of.valueOf(option) })).sort((a, b) => a.option.cost.total_cents - b.option.cost.total_cents || b.value - a.value);
    const unbeaten: typeof byCost = [];
    for (const each of byCost) if (each.value > (unbeaten.at(-1)?.value ?? 0)) unbeaten.push(each);
    const best = unbeaten.sort((a, b) => b.value - a.value).slice(0, MOST).map((each) => each.option);
    return sortedBy([...best, ...ofDwelling.filter((o) => of.taken.has(o.id) && !best.includes(o))], (o) => o.id);
  });
}
