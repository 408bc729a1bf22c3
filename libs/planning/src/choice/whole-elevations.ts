import type { Phase } from '#calc';
import { grouped, sortedBy } from '../grouped.js';
import type { FilmOption } from '../options/option.js';
import type { Candidate } from './candidate.js';

/** All dwellings behind some sides of a building, done together or left together. */
export interface ElevationGroup {
  /** `elevations ET 90+270` */
  readonly id: string;
  readonly building: string;
  readonly must: boolean;
  readonly ways: readonly ElevationWay[];
}

/** Some whole sides with one film in one phase: a line for every dwelling that looks out of them. */
export interface ElevationWay {
  readonly id: string;
  readonly film: string;
  readonly phase: number;
  readonly lines: readonly Candidate[];
}

export interface ElevationQuestion {
  readonly building: string;
  readonly options: readonly FilmOption[];
  /** Of all dwellings of the building, also those worth nothing by themselves. */
  readonly candidates: readonly Candidate[];
  readonly phases: readonly Phase[];
  readonly lockedIn: ReadonlySet<string>;
  /** Locked out as a whole: the elevation is whole without them. */
  readonly lockedOut: ReadonlySet<string>;
}

/** More sides than this are not combined: each alone and all together. */
const MOST_SIDES = 6;

/** Sides that some dwelling looks out of together belong together, for a dwelling is done once. */
function linkedSides(sidesOf: ReadonlyMap<string, readonly number[]>): number[][] {
  let parts: number[][] = [];
  for (const sides of sidesOf.values()) {
    const touched = parts.filter((part) => part.some((side) => sides.includes(side)));
    parts = [...parts.filter((part) => !touched.includes(part)), [...new Set([...touched.flat(), ...sides])].sort((a, b) => a - b)];
  }
  return parts.sort((a, b) => a[0]! - b[0]!);
}

function subsets(sides: readonly number[]): number[][] {
  if (sides.length > MOST_SIDES) return [...sides.map((side) => [side]), [...sides]];
  return Array.from({ length: (1 << sides.length) - 1 }, (_, i) => sides.filter((__, k) => ((i + 1) >> k) % 2 !== 0));
}

const keyOf = (c: Candidate): string => `${c.option.dwelling}|${c.option.facades.join('+')}|${c.option.films[0]!}|${String(c.phase)}`;

/** One film on all sides of the option, and all its panes, not only those without a question. */
const isWhole = (option: FilmOption): boolean => new Set(option.films).size === 1 && !option.id.endsWith('|ready panes');

/**
 * The choices of a building whose elevations must stay whole: every set of linked sides with one film in one phase, each with the line of every
 * dwelling behind them. Where one of these dwellings waits for a letter or has no such option, the elevation waits with it.
 */
export function elevationGroups(of: ElevationQuestion): ElevationGroup[] {
  const whole = of.options.filter((o) => isWhole(o) && !of.lockedOut.has(o.dwelling));
  const sidesOf = new Map([...grouped(whole, (o) => o.dwelling)].map(([id, own]): [string, number[]] => [id, [...new Set(own.flatMap((o) => o.facades))].sort((a, b) => a - b)]));
  const at = new Map(of.candidates.filter((c) => isWhole(c.option)).map((c) => [keyOf(c), c]));
  const films = [...new Set(whole.map((o) => o.films[0]!))].sort();
  return linkedSides(sidesOf).map((sides): ElevationGroup => {
    const id = `elevations ${of.building} ${sides.join('+')}`;
    const behind = sortedBy([...sidesOf].filter(([, own]) => own.some((side) => sides.includes(side))), ([dwelling]) => dwelling);
    const locked = behind.filter(([dwelling]) => of.lockedIn.has(dwelling));
    const ways = subsets(sides).flatMap((set) =>
      films.flatMap((film) =>
        of.phases.flatMap((phase, t): ElevationWay[] => {
          const touched = behind.map(([dwelling, own]) => ({ dwelling, own: own.filter((side) => set.includes(side)) })).filter(({ own }) => own.length > 0);
          if (!locked.every(([dwelling]) => touched.some((d) => d.dwelling === dwelling))) return [];
          const lines = touched.map(({ dwelling, own }) => at.get(`${dwelling}|${own.join('+')}|${film}|${String(t)}`));
          if (lines.some((line) => line === undefined)) return [];
          return [{ id: `${id}|${set.join('+')}|${film}@${phase.id}`, film, phase: t, lines: lines.map((line): Candidate => ({ ...line!, bundle: id })) }];
        }),
      ),
    );
    return { id, building: of.building, must: locked.length > 0, ways };
  });
}
