import { wholeDollarsText } from '#calc';
import { earnedInBillsWords, type Plan, type RankedDwelling, type RankedFacade, settledWords, spokenForWords, unspentWords } from '#planning';
import { counted, sentence, tableText } from './said.js';
import { explanationText } from './explain-text.js';
import { energyText } from './energy-text.js';
import { outlookText } from './outlook-text.js';

const dollars = wholeDollarsText;
const years = (value: number | null): string => (value === null ? 'none' : value.toFixed(1));
const percent = (share: number): string => `${(share * 100).toFixed(share < 0.01 && share > 0 ? 3 : 1)} %`;

const SIDES = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
const side = (azimuth_deg: number): string => `${SIDES[Math.round(azimuth_deg / 45) % 8]!} (${azimuth_deg.toFixed(0)}°)`;

/** Ranked rows as a table; facades with their side. A star marks a row whose dwelling the plan films in another way. */
export function ranksText(rows: readonly (RankedDwelling | RankedFacade)[], most: number): string {
  const isFacades = rows[0] !== undefined && 'azimuth_deg' in rows[0];
  const head = ['rank', 'band', 'dwelling', ...(isFacades ? ['side'] : []), 'cut per $, 1/yr', '8 in 10 range', 'cooling cut, $/yr', 'installed', 'payback, years', 'in the plan'];
  const shown = rows.slice(0, most).map((r) => [
    String(r.rank), r.band, r.dwelling, ...('azimuth_deg' in r ? [side(r.azimuth_deg)] : []), r.perDollar.toFixed(3), `${r.perDollarLow.toFixed(2)} – ${r.perDollarHigh.toFixed(2)}`, dollars(r.yearlyCooling_cents), dollars(r.cost_cents), years(r.simplePayback_yr), r.inPlan + (r.differs === null ? '' : ' *'),
  ]);
  const star = rows.slice(0, most).some((r) => r.differs !== null) ? '\n* the plan films other sides of this dwelling, or with another film, than this row; `rollout explain` and --json say which' : '';
  return tableText(head, shown) + (rows.length > most ? `\n… ${rows.length - most} more` : '') + star;
}

function proofText(plan: Plan): string {
  const { proof, worth } = plan;
  if (proof.status === 'infeasible') return `No plan fits: ${proof.why ?? ''}`;
  const choice =
    proof.status === 'optimal'
      ? `Proved: under the caps it was made with, no choice of these options is worth more than the ${dollars(proof.value_cents)} chosen.`
      : `Not proved to be the best: ${dollars(proof.value_cents)} chosen; under the caps it was made with, none can pass ${dollars(proof.bound_cents)} (gap ${percent(proof.gap)}).`;
  return `${choice}\nAfter whole rolls the lines are worth ${dollars(worth.lines_cents)}, their visits take off ${dollars(worth.visits_cents ?? 0)}; under the full caps, film priced by the piece, no plan passes ${dollars(worth.fullCapBound_cents)}. These are before freight, film beyond the pieces and contingency; with them see net present value.`;
}

function phasesText(plan: Plan): string {
  const head = ['phase', 'cap', 'to spend', 'left', 'film', 'labour', 'visits', 'supplies, freight, tax', 'contingency', 'dwellings', 'panes', 'person-hours', 'buildings'];
  return tableText(head, plan.phases.map((p) => [
    p.phase.id, dollars(p.phase.cap_cents), dollars(p.spending.total_cents), dollars(p.left_cents), dollars(p.spending.film_cents), dollars(p.spending.labour_cents + p.spending.removal_cents), dollars(p.spending.visits_cents), dollars(p.spending.consumables_cents + p.spending.freight_cents + p.spending.tax_cents), dollars(p.spending.contingency_cents),
    String(p.lines), String(p.panes), (p.minutes.best / 60).toFixed(0) + (p.phase.crewMinutes === null ? '' : ` of ${(p.phase.crewMinutes / 60).toFixed(0)}`), p.visits.length === 0 ? 'none' : p.visits.join(' '),
  ]));
}

function buildingsText(plan: Plan): string {
  const head = ['building', 'ranked', 'best per $', 'middle per $', 'in the plan', 'in reserve', 'waits for a letter', 'does not pay'];
  return tableText(head, plan.buildings.map((b) => {
    const rows = plan.rankedDwellings.filter((r) => r.building === b.id);
    const middle = rows[Math.floor(rows.length / 2)];
    const isIn = rows.filter((r) => plan.lines.some((l) => l.dwelling === r.dwelling)).length;
    const waits = rows.filter((r) => r.inPlan.startsWith('waits')).length;
    const reserve = rows.filter((r) => r.inPlan.startsWith('in reserve')).length;
    const poor = rows.filter((r) => r.inPlan.startsWith('does not')).length;
    return [b.name === b.id ? b.id : `${b.id} ${b.name}`, String(rows.length), rows[0]?.perDollar.toFixed(3) ?? '', middle?.perDollar.toFixed(3) ?? '', String(isIn), String(reserve), String(waits), String(poor)];
  }));
}

/** What is expected of the modelled savings: as modelled, and as studies and bills found. */
function realisationText(plan: Plan): string[] {
  if (plan.bills === undefined) return ['These are model figures, not calibrated on bills: measured studies of lived-in homes mostly find less.'];
  const { plan: found, calibration, verification, setting } = plan.bills;
  const year = (share: number): string => dollars(plan.payback.firstYearCooling_cents * share);
  const range = setting === 'as-found' ? `Savings count as found (${percent(found.middle)} of the model), as asked.` : `First-year cooling saving: ${dollars(plan.payback.firstYearCooling_cents)} as modelled; ${year(found.middle)} expected in bills (eight in ten between ${year(found.low)} and ${year(found.high)}).`;
  return [`${range} ${sentence(found.basis)}`, sentence(calibration.words), ...(verification === null ? [] : [sentence(verification.words)])];
}

/** The plan in a page of text. */
export function planText(plan: Plan): string {
  const { payback, eligible } = plan;
  const money = plan.bills?.setting === 'as-found' ? 'savings as found in bills' : 'savings as modelled';
  return [
    `${plan.name}: plan ${plan.id}, ${plan.terms.view === 'whole' ? 'whole-building view' : "owner's view"}, ${plan.madeOn}`,
    '',
    phasesText(plan),
    ...plan.findings.filter((f) => f.subject === 'caps').map((f) => `${sentence(f.text)} To do: ${f.whatToDo}.`),
    ...settledWords(plan),
    ...spokenForWords(plan),
    ...unspentWords(plan),
    '',
    proofText(plan),
    `Everything eligible costs ${dollars(eligible.cost_cents)}; the caps buy ${percent(eligible.boughtShare)} of it, and ${percent(eligible.payingBoughtShare)} of the ${dollars(eligible.payingCost_cents)} that pays in this view.`,
    `First year of each line, ${money}: cooling down by ${Math.round(payback.firstYear_kWh).toLocaleString('en-US')} kWh, ${dollars(payback.firstYearCooling_cents)}; heating up by ${dollars(payback.firstYearHeating_cents)}; of the two together the owner keeps ${dollars(payback.firstYearOwner_cents)}.`,
    `All costs in (whole rolls, freight, tax, visits, contingency), ${money}: net present value ${dollars(payback.npv_cents)} for all payers, ${dollars(payback.npvOwner_cents)} for the owner alone; ${payback.simplePayback_yr === null ? 'no payback' : `payback ${years(payback.simplePayback_yr)} years`}.`,
    ...earnedInBillsWords(plan),
    ...realisationText(plan),
    '',
    ...outlookText(plan),
    buildingsText(plan),
    '',
    ...(plan.waiting.length === 0 ? [] : ['Waiting without a date:', ...plan.waiting.slice(0, 8).map((w) => `  ${w.subject}: ${counted(w.dwellings, 'dwelling')}, ${counted(w.panes, 'pane')}, ${w.value_cents < 50 ? 'nothing worth its cost' : `${dollars(w.value_cents)} of value`} behind it`), ...(plan.waiting.length > 8 ? [`  … and ${counted(plan.waiting.length - 8, 'more letter')}; the sheet of the workbook lists them`] : []), '']),
    ...explanationText(plan),
    '',
    ...energyText(plan),
    ...plan.rounds.map((r) => `round ${r.round}, ${r.subject}: ${r.text}`),
  ].join('\n');
}
