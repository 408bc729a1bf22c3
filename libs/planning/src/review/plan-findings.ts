import { type Phase, savingWarnings } from '#calc';
import type { EnergyReview } from '../energy/energy-types.js';
import { NO_CAP } from '../job/asked-portfolio.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { PlanLine } from '../plan/plan.js';
import type { PlanFinding } from '../plan/plan-finding.js';

/** Lines whose saving lies outside what published cases found: said, never clamped. */
function outsideBand(line: PlanLine): PlanFinding[] {
  if (!(line.option.glassArea_m2 > 0)) return [];
  const saved_kWh = line.option.segments[0]?.saving.coolingElectricity_kWh ?? 0;
  const warnings = savingWarnings({ saved_kWh, bare_kWh: line.option.asFoundCooling_kWh, film_m2: line.option.glassArea_m2 });
  return warnings.map((text) => ({ severity: 'warning', subject: line.dwelling, text, whatToDo: 'look at glass, shade, set point and base load of the dwelling again' }));
}

/** Buildings in damp air: what the second saving figure is for. */
function humid({ buildings }: EnergyReview): PlanFinding[] {
  return buildings.filter((b) => b.isHumid).map((b) => ({
    severity: 'warning',
    subject: b.building,
    text: 'humid climate: savings are worked out with the moisture of today still taken out; a machine that just runs less saves more and leaves the rooms damper (second figure on the sheet Energy)',
    whatToDo: 'ask tenants about damp after the first phase; a lower fan speed or a dehumidifier keeps the moisture out and costs part of the second figure',
  }));
}

/** No money was named, so nothing is bought. */
function noCap(phases: readonly Pick<Phase, 'name'>[]): PlanFinding[] {
  if (!phases.some((p) => p.name === NO_CAP)) return [];
  return [{ severity: 'warning', subject: 'caps', text: 'no fiscal year and no cap was given: dwellings and sides are ranked, nothing is bought', whatToDo: 'name an amount for each owner\'s first year (--cap 10000), or fiscal years with their caps in plan.json' }];
}

/** Findings on the result itself: what was not asked, what the model does not know, and lines outside what studies span. */
export function planFindings(choices: Pick<FilmChoices, 'glazings'>, of: { readonly lines: readonly PlanLine[]; readonly energy: EnergyReview; readonly phases: readonly Pick<Phase, 'name'>[] }): PlanFinding[] {
  const { lines, energy } = of;
  const notes = [...choices.glazings.values()].flatMap((g): PlanFinding[] => (g.note === null ? [] : [{ severity: 'note', subject: g.key, text: g.note, whatToDo: g.unknown ? 'test the glass before ordering' : 'nothing, unless the make-up is known' }]));
  return [
    ...noCap(of.phases),
    {
      severity: 'warning',
      subject: 'all savings',
      text: 'model, not calibrated: no bills are compared. Measured studies of film in lived-in homes mostly find 1 to 10 % of cooling saved; models of glassy rooms 30 to 50 %.',
      whatToDo: 'compare bills after the first phase before spending the next cap on the strength of these savings',
    },
    ...notes,
    ...humid(energy),
    ...lines.flatMap(outsideBand),
  ];
}
