import type { FilmChoices } from '../options/film-choices.js';
import type { PlanFinding, PlanLine } from '../plan/plan.js';

/** Share of a dwelling's cooling that published and computed film studies span; outside it the result is looked at twice. */
const SANITY_SHARE = [0.02, 0.45] as const;

function outsideBand(line: PlanLine): PlanFinding[] {
  const saved = line.option.segments[0]?.saving.coolingElectricity_kWh ?? 0;
  const share = line.option.asFoundCooling_kWh > 0 ? saved / line.option.asFoundCooling_kWh : 0;
  if (share >= SANITY_SHARE[0] && share <= SANITY_SHARE[1]) return [];
  return [{ severity: 'warning', subject: line.dwelling, text: `the film is computed to save ${(share * 100).toFixed(0)} % of the dwelling's cooling; studies span 2 to 45 %`, whatToDo: 'look at glass, shade, set point and base load of the dwelling again' }];
}

/** Findings on the result itself: what the model does not know, and lines outside what studies span. */
export function planFindings(choices: Pick<FilmChoices, 'glazings'>, lines: readonly PlanLine[]): PlanFinding[] {
  const notes = [...choices.glazings.values()].flatMap((g): PlanFinding[] => (g.note === null ? [] : [{ severity: 'note', subject: g.key, text: g.note, whatToDo: g.unknown ? 'test the glass before ordering' : 'nothing, unless the make-up is known' }]));
  return [
    {
      severity: 'warning',
      subject: 'all savings',
      text: 'model, not calibrated: no bills are compared. Measured studies of film in lived-in homes mostly find 1 to 10 % of cooling saved; models of glassy rooms 30 to 50 %.',
      whatToDo: 'compare bills after the first phase before spending the next cap on the strength of these savings',
    },
    ...notes,
    ...lines.flatMap(outsideBand),
  ];
}
