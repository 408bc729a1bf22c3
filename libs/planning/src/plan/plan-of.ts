import { checkedPlan } from '../choice/check-proof.js';
import { explainPlan } from '../choice/explain-plan.js';
import { planWorth } from '../choice/plan-worth.js';
import type { ChosenUnderCaps } from '../choice/choose-under-caps.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { KnownPortfolio } from '../known/known-portfolio.js';
import { meterResults } from '../review/meter-results.js';
import type { FilmOption } from '../options/option.js';
import { sortedBy } from '../grouped.js';
import { lineUses } from '../review/line-uses.js';
import type { OutlookOrder } from '../uncertainty/outlook.js';
import type { ExpectedShare } from '../uncertainty/found-share.js';
import { outlookOf } from '../uncertainty/outlook-of.js';
import { paybackReview } from '../review/payback-review.js';
import { planFindings } from '../review/plan-findings.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { PhaseResult, Plan, PlanLine, RoundLog } from './plan.js';
import type { PricedChoice, RollPricing } from '../rolls/price-by-rolls.js';
import { rebateIn } from '../options/rebates.js';
import { rankedLists } from '../review/ranked-lists.js';
import { firstYear_cents, reasonOf } from '../review/reasons.js';
import { energyReview } from '../energy/energy-review.js';
import { chosenSets } from './settled.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { phaseYear, simplePayback } from '../options/value.js';
import type { ValuedOptions } from '../options/valued-options.js';
import { waitingItems } from '../review/waiting.js';
import { crewWork } from '../crew/crew-work.js';
import { cutReviews } from '../rolls/cut-review.js';
import type { Workers } from '../workers.js';

/** All that the stages have brought together. */
export interface PlanParts {
  readonly job: PlanJob;
  readonly known: KnownPortfolio;
  readonly skies: SkiesOnFacades;
  readonly choices: FilmChoices;
  readonly settings: PlanSettingsInForce;
  readonly valued: ValuedOptions;
  readonly chosen: ChosenUnderCaps;
  readonly pricing: RollPricing;
  readonly priced: PricedChoice;
  readonly rounds: readonly RoundLog[];
  readonly workedCaps: readonly number[];
  readonly fullCapBound_cents: number;
  readonly expectedOf: (dwelling: string) => ExpectedShare;
  readonly work: Workers;
}

/** Glass of an option's windows, in trade words. */
function glassOf(option: FilmOption, parts: PlanParts): string {
  const task = parts.valued.tasks.find((t) => t.dwelling.id === option.dwelling);
  const keys = new Set((task?.panels ?? []).filter((p) => option.facades.includes(p.azimuth_deg)).map((p) => p.glazing));
  return [...keys].map((key) => parts.choices.glazings.get(key)?.name ?? key).join(' and ');
}

/** Value of an option in the plan's view in the earliest phase of its owner, whether or not it waits for a letter. */
export function valueSoon(option: FilmOption, parts: Pick<PlanParts, 'settings'>): number {
  const { settings } = parts;
  const own = settings.phases.filter((p) => p.ownerEntity === settings.ownerOf(option.building));
  const open = option.waitsFor.length > 0 ? own : own.filter((p) => option.from <= p.lastDay);
  const first = [...(open.length > 0 ? open : own)].sort((a, b) => (a.firstDay < b.firstDay ? -1 : 1))[0];
  if (first === undefined) return 0;
  const value = settings.valueIn(option, first);
  return settings.terms.view === 'owner' ? value.owner_cents : value.whole_cents;
}

function planLines(parts: PlanParts, glass: (option: FilmOption) => string): PlanLine[] {
  const { settings } = parts;
  return parts.priced.phases.flatMap((phase) =>
    phase.lines.map((line): PlanLine => {
      const rebate = rebateIn(line.option.rebates, phase.phase)?.cents ?? 0;
      const payback = simplePayback(line.option.cost.total_cents - rebate, firstYear_cents(line.option));
      const cost_now = (line.option.cost.total_cents - rebate) / (1 + settings.terms.realDiscountRate) ** phaseYear(phase.phase, settings.terms.studyStart);
      return {
        dwelling: line.option.dwelling,
        building: line.option.building,
        ownerEntity: settings.ownerOf(line.option.building),
        phase: phase.phase.id,
        option: line.option,
        windows: parts.pricing.windowsOf(line),
        value: line.value,
        simplePayback_yr: payback.years,
        paybackWhy: payback.why,
        sir: cost_now > 0 ? (line.value.whole_cents + cost_now) / cost_now : 0,
        reason: reasonOf(line.option, glass(line.option)),
        differs: null,
      };
    }),
  );
}

function phaseResults(parts: PlanParts): PhaseResult[] {
  const { settings, priced } = parts;
  const taken = new Set(priced.choice.lines.map((l) => l.option.dwelling));
  return priced.phases.map(({ phase, lines, visits, spending }): PhaseResult => {
    const minutes = (end: 'low' | 'best' | 'high'): number => lines.reduce((sum, l) => sum + l.option.minutes[end], 0);
    const leftOver = parts.valued.options.some((o) => !taken.has(o.dwelling) && settings.ownerOf(o.building) === phase.ownerEntity && o.waitsFor.length === 0 && o.from <= phase.lastDay && valueSoon(o, parts) > 0);
    return {
      phase,
      spending,
      left_cents: phase.cap_cents - spending.total_cents,
      minutes: { low: minutes('low'), best: minutes('best'), high: minutes('high') },
      lines: lines.length,
      panes: lines.reduce((sum, l) => sum + l.option.paneCount, 0),
      visits,
      workedCap_cents: parts.workedCaps[settings.phases.findIndex((p) => p.id === phase.id)] ?? 0,
      nothingLeftThatPays: !leftOver,
    };
  });
}

/** What everything eligible costs, and what of it the caps buy: the dearest option of each dwelling without regard to letters, by its best film. */
function eligible(parts: PlanParts): Plan['eligible'] {
  const best = new Map<string, { readonly option: FilmOption; readonly value: number }>();
  for (const option of parts.valued.options) {
    if (option.id.endsWith('|ready panes')) continue;
    const before = best.get(option.dwelling);
    const value = valueSoon(option, parts);
    const wider = before === undefined || option.paneCount > before.option.paneCount || (option.paneCount === before.option.paneCount && value > before.value);
    if (wider) best.set(option.dwelling, { option, value });
  }
  const paying = new Map<string, { readonly option: FilmOption; readonly value: number }>();
  for (const option of parts.valued.options) {
    const value = valueSoon(option, parts);
    if (value > 0 && value > (paying.get(option.dwelling)?.value ?? 0)) paying.set(option.dwelling, { option, value });
  }
  const costOf = (set: ReadonlyMap<string, { readonly option: FilmOption }>): number => [...set.values()].reduce((sum, { option }) => sum + option.cost.total_cents, 0);
  const bought = parts.priced.choice.lines.reduce((sum, l) => sum + l.option.cost.total_cents, 0);
  const [all, pays] = [costOf(best), costOf(paying)];
  return {
    cost_cents: Math.round(all),
    panes: [...best.values()].reduce((sum, { option }) => sum + option.paneCount, 0),
    boughtShare: all > 0 ? bought / all : 0,
    payingCost_cents: Math.round(pays),
    payingBoughtShare: pays > 0 ? bought / pays : 0,
  };
}

/** Tariffs of the meters the lines hang on. */
function tariffsOf({ priced, valued }: PlanParts): Plan['tariffs'] {
  const chosen = new Set(priced.choice.lines.map((l) => l.option.dwelling));
  const byLabel = new Map(valued.tasks.filter((t) => chosen.has(t.dwelling.id)).map((t) => [t.dwelling.meter.tariff.label, t.dwelling.meter.tariff]));
  return sortedBy([...byLabel.values()], (t) => t.label);
}

/** What the lines pay back, the use it follows from, and how sure it is. */
async function moneyOf(parts: PlanParts): Promise<Pick<Plan, 'payback' | 'tariffs' | 'uses' | 'outlook'>> {
  const { job, choices, settings, valued, priced, work } = parts;
  const { terms, ownerOf, endYearOf } = settings;
  const outlook = (asked: OutlookOrder): Promise<Plan['outlook']> =>
    outlookOf({ inputs: job.catalogue.uncertainInputs, asked, valued, choices, settings, priced, workedCaps_cents: parts.workedCaps, expectedOf: parts.expectedOf, valueOf: (o) => valueSoon(o, parts), work, progress: job.progress });
  return {
    payback: paybackReview(priced, { terms, ownerOf, endYearOf, rebates: job.portfolio.rebates }),
    tariffs: tariffsOf(parts),
    uses: await lineUses(priced.phases.flatMap((p) => p.lines), { tasks: valued.tasks, setOf: chosenSets(priced.choice, choices), work, room: choices.room }),
    outlook: job.outlook === undefined ? null : await outlook(job.outlook),
  };
}

/** Dwellings of the survey without a rank, with the reason. */
function notRankedOf({ known, job }: PlanParts, ranked: ReadonlySet<string>): Plan['notRanked'] {
  const doneOn = new Map((job.settled?.done ?? []).map((d) => [d.dwelling, `film is on: done by ${d.lastDay}`]));
  const computed = known.dwellings.filter((d) => !ranked.has(d.id)).map((d) => ({ dwelling: d.id, why: doneOn.get(d.id) ?? 'no film may go on any of its panes: see the limits and consents of its building' }));
  return [...known.notComputed, ...computed];
}

/** Puts the plan together; every figure comes from a stage before. */
export async function planOf(parts: PlanParts): Promise<Plan> {
  const { job, known, choices, settings, valued, priced } = parts;
  const glass = (option: FilmOption): string => glassOf(option, parts);
  const lines = planLines(parts, glass);
  const ranks = rankedLists({ options: valued.options, lines, glassOf: glass, valueOf: (o) => valueSoon(o, parts) });
  const differs = new Map(ranks.dwellings.map((r) => [r.dwelling, r.differs]));
  const meters = await meterResults({ tasks: valued.tasks, choice: priced.choice, setOf: chosenSets(priced.choice, choices), work: parts.work, room: choices.room, sharedOnly: false });
  const cutting = cutReviews(priced.phases);
  const crew = crewWork(priced.phases, { ...settings, films: parts.pricing.films, windowsOf: parts.pricing.windowsOf, portfolio: job.portfolio, madeOn: job.madeOn, settled: job.settled ?? null, timeModel: job.catalogue.timeModel, skies: parts.skies, tasks: valued.tasks, defaultOf: defaultsOf(job.catalogue) });
  const energy = await energyReview({ job, valued, choices, skies: parts.skies, lines, ranked: ranks, buildings: known.buildings, terms: settings.terms, valueOf: (o) => valueSoon(o, parts), work: parts.work });
  return checkedPlan({
    id: job.id,
    revision: job.revision,
    parent: job.parent,
    madeOn: job.madeOn,
    program: job.program,
    inputHash: job.inputHash,
    name: job.portfolio.settings.name,
    terms: settings.terms,
    aim: job.aim ?? 'middle',
    buildings: [...known.buildings.values()],
    dwellings: job.portfolio.dwellings,
    weather: [...known.buildings.keys()].sort().map((building) => ({ building, label: job.weather.get(building)?.label ?? '', source: job.weather.get(building)?.source ?? '' })),
    films: choices.films,
    rolls: job.portfolio.rolls,
    rankedDwellings: ranks.dwellings,
    rankedFacades: ranks.facades,
    notRanked: notRankedOf(parts, new Set(ranks.dwellings.map((r) => r.dwelling))),
    lines: lines.map((line) => ({ ...line, differs: differs.get(line.dwelling) ?? null })),
    phases: phaseResults(parts),
    proof: parts.chosen.choice.proof,
    worth: planWorth(priced, { settings, fullCapBound_cents: parts.fullCapBound_cents }),
    rounds: parts.rounds,
    waiting: waitingItems(valued.options, (o) => valueSoon(o, parts)),
    cuts: priced.phases.flatMap((p) => p.cuts),
    cutReviews: cutting.reviews,
    workOrders: crew.workOrders,
    calendar: crew.calendar,
    settled: job.settled ?? null,
    meters,
    energy,
    ...(await moneyOf(parts)),
    explanations: await explainPlan({ chosen: parts.chosen, lines: priced.choice.lines, options: valued.options, settings, work: parts.work }),
    eligible: eligible(parts),
    assumed: [...known.assumed, ...choices.measured.assumed, ...settings.derived, ...crew.assumed],
    findings: [...job.findings, ...known.findings, ...choices.findings, ...parts.chosen.findings, ...crew.findings, ...cutting.findings, ...planFindings(choices, { lines, energy, phases: settings.phases })],
  });
}
