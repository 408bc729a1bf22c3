import type { Building, Lock, Phase } from '#calc';
import type { FilmOption } from '#planning';
import type { ChoiceTerms } from '../../libs/planning/src/choice/choose-under-caps.js';
import { filmOption, onePhase, planTermsOf } from './film-option.js';

/** Worth of an option in cents by its id, the same in every phase. */
export type WorthOf = Readonly<Record<string, number>>;

export const building = (change: Partial<Building> = {}): Building => ({ id: 'B1', ownerEntity: 'O', widestRoll_mm: null, oneFilm: null, wholeElevations: null, ...change }) as Building;

/** An option of a dwelling of B1 on some sides with film A, for 100 dollars. */
export const sideOption = (dwelling: string, sides: readonly number[], change: Partial<FilmOption> = {}): FilmOption =>
  filmOption({ id: `${dwelling}|${sides.join('+')}|A`, dwelling, facades: sides, films: sides.map(() => 'A'), film: 'A', ...change });

/** What a choice is asked: one building, phases of one owner, visits for nothing. */
export function choiceTerms(worth: WorthOf, change: Partial<ChoiceTerms> & { readonly building?: Partial<Building> } = {}): ChoiceTerms & { readonly lockedIn: ReadonlySet<string>; readonly ownerOf: () => string } {
  const { building: of, ...terms } = change;
  return {
    phases: [onePhase(100_000)],
    buildings: new Map([['B1', building(of)]]),
    locks: [],
    terms: planTermsOf(),
    valueIn: (option, phase) => ({ phase: phase.id, whole_cents: worth[option.id] ?? 0, owner_cents: worth[option.id] ?? 0 }),
    visit: () => ({ cents: 0, minutes: 0 }),
    lockedIn: new Set<string>(),
    ownerOf: () => 'O',
    ...terms,
  };
}

export const lock = (change: Partial<Lock>): Lock => ({ subject: 'B1/1', direction: 'in', azimuth_deg: null, phase: null, film: null, reason: 'asked', role: 'manager', date: '2026-07-01', ...change });

export const twoPhases = (caps_cents: readonly [number, number]): Phase[] => [
  { ...onePhase(caps_cents[0]), id: 'O/1' },
  { ...onePhase(caps_cents[1]), id: 'O/2', name: '2', firstDay: '2027-07-01', lastDay: '2028-06-30' },
];
