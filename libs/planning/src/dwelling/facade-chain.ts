import type { FacadeSet, SpanSaving } from './dwelling-task.js';
import { grouped } from '../grouped.js';

/** A set with what it saves; whatever else a result holds travels along. */
export interface SavingSet {
  readonly set: FacadeSet;
  readonly spans: readonly SpanSaving[];
}

/** Up to here all sets are computed anyway. */
const ALL_SETS_UP_TO = 4;

/** Saving of the first years, net of added heating: what the chain is grown by. */
const worth = (result: SavingSet): number => (result.spans[0] === undefined ? 0 : result.spans[0].cooling_cents - result.spans[0].addedHeating_cents);

const keyOf = (facades: readonly number[]): string => facades.join('+');

/**
 * The chain of a dwelling with more than four facades: from its best facade, each step adds the one that adds most to what is there, since
 * savings of facades in one dwelling do not add up. Sets already computed are used, not computed again.
 *
 * @param results singles, pairs and the whole, by film and by whether waiting panes are left out
 * @param compute works a set out
 * @returns the sets of the chain that were not among the results, shortest first
 */
export function chainedSets<R extends SavingSet>(results: readonly R[], compute: (set: FacadeSet) => R): R[] {
  const groups = [...grouped(results, (r) => `${r.set.films.every((f) => f === r.set.films[0]) ? String(r.set.films[0]) : 'mixed'}|${String(r.set.readyOnly)}`).values()];
  return groups.flatMap((group) => {
    const singles = group.filter((r) => r.set.facades.length === 1);
    if (singles.length <= ALL_SETS_UP_TO) return [];
    const known = new Map(group.map((r) => [keyOf(r.set.facades), r]));
    const added: R[] = [];
    let chain = singles.reduce((best, r) => (worth(r) > worth(best) ? r : best));
    while (chain.set.facades.length < singles.length - 1) {
      const longer = singles
        .flatMap((r) => r.set.facades)
        .filter((facade) => !chain.set.facades.includes(facade))
        .map((facade) => {
          const facades = [...chain.set.facades, facade].sort((a, b) => a - b);
          return known.get(keyOf(facades)) ?? compute({ ...chain.set, facades, films: facades.map(() => chain.set.films[0]!) });
        });
      chain = longer.reduce((best, r) => (worth(r) > worth(best) ? r : best));
      if (!known.has(keyOf(chain.set.facades))) added.push(chain);
    }
    return added;
  });
}
