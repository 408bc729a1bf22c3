import { sideLetters } from '../dwelling/facade-sets.js';
import { grouped } from '../grouped.js';
import type { FilmOption } from '../options/option.js';

const joined = (parts: readonly string[]): string => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`);

/** An option as one says it: film B on S and W; film A on E, film B on W (panes that need no letter). */
export function optionWords({ id, facades, films }: Pick<FilmOption, 'id' | 'facades' | 'films'>): string {
  const sides = facades.map((azimuth_deg, i) => ({ side: sideLetters(azimuth_deg), film: films[i] ?? films[0] ?? '' }));
  const each = [...grouped(sides, (s) => s.film)].map(([film, own]) => `film ${film} on ${joined([...new Set(own.map((s) => s.side))])}`);
  return each.join(', ') + (id.endsWith('|ready panes') ? ' (panes that need no letter)' : '');
}
