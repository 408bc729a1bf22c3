import type { Choice } from '../choice/choice.js';
import type { FacadeSet } from '../dwelling/dwelling-task.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import { firstYear_cents } from '../review/reasons.js';
import { phaseYear } from '../options/value.js';
import { setOfOption } from '../options/valued-options.js';

/** Set chosen for each dwelling of a choice. */
export function chosenSets(choice: Choice, choices: FilmChoices): (dwelling: string) => FacadeSet | null {
  const sets = new Map(choice.lines.map((l) => [l.option.dwelling, setOfOption(l.option, choices)]));
  return (dwelling) => sets.get(dwelling) ?? null;
}

/** First-year saving of a choice, all payers, net of added heating, one by one. */
export function planSaving_cents(choice: Choice): number {
  return choice.lines.reduce((sum, line) => sum + firstYear_cents(line.option), 0);
}

/** First and last calendar year any option's film can work in. */
export function studyYears(settings: Pick<PlanSettingsInForce, 'terms' | 'phases'>, choices: Pick<FilmChoices, 'films' | 'lifeOf'>): readonly [number, number] {
  const first = Number(settings.terms.studyStart.slice(0, 4));
  const latest = Math.max(0, ...settings.phases.map((p) => phaseYear(p, settings.terms.studyStart)));
  const life = Math.max(1, ...choices.films.map((f) => choices.lifeOf(f)));
  return [first, first + latest + life];
}
