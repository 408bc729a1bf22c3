import { drawnOrder, type Phase } from '#calc';
import type { FilmOption, PhaseValue } from '../options/option.js';
import { bandsOf, bestOf } from '../review/rank.js';
import { grouped } from '../grouped.js';
import type { Candidate } from './candidate.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';

export interface DrawAt {
  readonly seed: number | null;
  readonly options: readonly FilmOption[];
  readonly phases: readonly Phase[];
  readonly lockedIn: ReadonlySet<string>;
  readonly valueIn: (option: FilmOption, phase: Phase) => PhaseValue;
}

/** Lines that may change places: one band, one building, one film, the same cost to the cent and the same minutes, free to go in any of the phases. */
function exchangeable(lines: readonly Candidate[], at: DrawAt): Candidate[][] {
  const ranked = bestOf(at.options, (o) => o.dwelling);
  const bands = bandsOf(ranked);
  const bandOf = new Map(ranked.map((r, i) => [r.option.dwelling, bands[i]!]));
  const free = lines.filter((l) => !at.lockedIn.has(l.option.dwelling));
  const alike = grouped(free, (l) => [bandOf.get(l.option.dwelling), l.option.building, l.option.film, Math.round(l.option.cost.total_cents), Math.round(l.option.minutes.best)].join('|'));
  return [...alike.values()].filter((same) => new Set(same.map((l) => l.phase)).size > 1 && same.every((l) => same.every((other) => l.option.from <= at.phases[other.phase]!.lastDay)));
}

/**
 * Draws who goes first among lines that cannot be told apart, where the settings give a seed: those that come later are then a fair comparison
 * for those that came first. As many go in each phase as before, at the same cost; what is drawn is said.
 */
export function drawnPhases(chosen: ChosenUnderCaps, at: DrawAt): ChosenUnderCaps {
  if (at.seed === null) return chosen;
  const { seed } = at;
  const moved = new Map<string, Candidate>();
  const groups = exchangeable(chosen.choice.lines, at);
  for (const same of groups) {
    const order = drawnOrder([same.map((l) => l.option.dwelling)], seed);
    const places = same.map((l) => l.phase).sort((a, b) => (at.phases[a]!.firstDay < at.phases[b]!.firstDay ? -1 : 1));
    const byDwelling = new Map(same.map((l) => [l.option.dwelling, l]));
    order.forEach((dwelling, i) => {
      const { option } = byDwelling.get(dwelling)!;
      moved.set(dwelling, { option, phase: places[i]!, value: at.valueIn(option, at.phases[places[i]!]!) });
    });
  }
  const text = groups.length === 0 ? 'no two lines of one band, building, film and cost stand in different phases: nothing to draw' : `seed ${String(seed)} drew: ${[...moved].map(([d, l]) => `${d} in ${at.phases[l.phase]!.id}`).join(', ')}`;
  return {
    ...chosen,
    choice: { ...chosen.choice, lines: chosen.choice.lines.map((l) => moved.get(l.option.dwelling) ?? l) },
    findings: [...chosen.findings, { severity: 'note', subject: 'who goes first', text, whatToDo: 'keep to the order: homes that wait are what the first ones are compared with' }],
  };
}
