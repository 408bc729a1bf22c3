import { defectShare, learnedRealisation, type LogSpread, type Portfolio, recalibrated, type SiteRecord, type TimeModel } from '#calc';
import { grouped } from '../grouped.js';
import type { DefaultOf } from '../job/assumption-book.js';
import { defaultsOf } from '../job/plan-job.js';
import type { FilmOption } from '../options/option.js';
import { type MeasuredRealisation, type Verification, didItPay } from './did-it-pay.js';
import { type BillsJob, billsOf } from './fit-bills.js';
import { installedDays } from './installed-days.js';
import type { MeterBills } from './meter-bills.js';
import type { BillsReview, Learned, StatedRealisation } from './review.js';

/** Minutes of a visit as the model has them and as they were noted. */
export interface TimedVisit {
  readonly model_min: number;
  readonly real_min: number;
}

const TENTH_PERCENTILE = 1.2816;
const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

const spreadOf = (of: StatedRealisation): LogSpread => ({ mean: Math.log(of.middle), standardDeviation: Math.log(of.high / of.low) / (2 * TENTH_PERCENTILE) });

/** A factor once bills after the work are weighed in. */
export function learnedStated(before: StatedRealisation, measured: MeasuredRealisation): StatedRealisation {
  const { low, middle, high } = learnedRealisation(spreadOf(before), measured);
  return { low, middle, high, basis: 'measured after the work', words: `measured after the work: of a modelled saving ${percent(middle)} is expected in bills, eight in ten between ${percent(low)} and ${percent(high)}` };
}

/** Option of a filmed dwelling nearest to what was put on: the film that was noted, and the most panes. */
export function optionDone(options: readonly FilmOption[], records: readonly SiteRecord[]): FilmOption | null {
  const film = records.find((r) => r.film !== null)?.film ?? null;
  const fits = film === null ? options : options.filter((o) => o.films.every((f) => f === film));
  return [...(fits.length > 0 ? fits : options)].sort((a, b) => b.paneCount - a.paneCount || (a.id < b.id ? -1 : 1))[0] ?? null;
}

export type DoneOption = (dwelling: string) => FilmOption | null;

/** Share of a meter's cooling that the model expects the film on its filmed dwellings to save. */
export function modelledShareOfCooling(done: DoneOption): (meter: MeterBills) => number | null {
  return (meter) => {
    const options = meter.dwellings.flatMap((d) => done(d) ?? []);
    const cooling = options.reduce((sum, o) => sum + o.asFoundCooling_kWh, 0);
    if (options.length === 0 || !(cooling > 0)) return null;
    const saved = options.reduce((sum, o) => sum + (o.segments[0]?.saving.coolingElectricity_kWh ?? 0) / (o.counted ?? 1), 0);
    return (saved / cooling) * (options.length / meter.dwellings.length);
  };
}

/** Whether a meter may carry electric heating: any of its dwellings heats by wire, or nobody knows. */
export function heatsByWire(portfolio: Pick<Portfolio, 'dwellings'>): (meter: MeterBills) => boolean {
  const kinds = new Map(portfolio.dwellings.map((d) => [d.id, d.heating.kind]));
  return (meter) => meter.use === 'all' && meter.dwellings.some((d) => !['gas', 'none'].includes(kinds.get(d) ?? 'unknown'));
}

/** Options of the dwellings that were filmed, by what was noted. */
export function doneOptions(records: readonly SiteRecord[], optionsOf: (dwelling: string) => readonly FilmOption[]): DoneOption {
  const installed = installedDays(records);
  return (dwelling) => (installed.has(dwelling) ? optionDone(optionsOf(dwelling), records.filter((r) => r.kind === 'done' && (r.dwelling === dwelling || (r.window ?? '').startsWith(`${dwelling}/`)))) : null);
}

function defectsOf(records: readonly SiteRecord[], of: { readonly done: DoneOption; readonly expected: number }): Learned['defects'] {
  const noted = records.filter((r) => r.kind === 'done');
  const panes = noted.reduce((sum, r) => sum + (r.window === null && r.dwelling !== null ? (of.done(r.dwelling)?.paneCount ?? 1) : 1), 0);
  const defects = Math.min(panes, records.filter((r) => r.kind === 'defect' || r.kind === 'broken-pane').length);
  return { panes, defects, expected: of.expected, share: defectShare({ panes, defects }, of.expected) };
}

/** What was learned from bills and site records, with the rules it was learned by. */
export function learned(of: { readonly records: readonly SiteRecord[]; readonly verification: Verification; readonly before: StatedRealisation | null; readonly done: DoneOption; readonly visits: readonly TimedVisit[] | null; readonly timeModel: TimeModel; readonly defaultOf: DefaultOf }): Learned {
  const { records, verification, before } = of;
  const measured = verification.realisation;
  const realisation = measured === null || before === null ? null : { before, measured, after: learnedStated(before, measured) };
  const { factor, recorded, visits } = recalibrated(of.timeModel, of.visits ?? []);
  const defects = defectsOf(records, { done: of.done, expected: of.defaultOf<number>('defectShare').value });
  return {
    realisation,
    minutes: { factor, recorded, visits },
    defects,
    words: [
      realisation === null
        ? 'Savings: no bills after the work can be held against a modelled saving; the expectation stays.'
        : `Savings: bills show ${percent(realisation.measured.factor)} of the modelled saving (${percent(realisation.measured.low)} to ${percent(realisation.measured.high)}); weighed with the ${percent(realisation.before.middle)} expected before by Bayes’ rule, the next phase expects ${percent(realisation.after.middle)} (${percent(realisation.after.low)} to ${percent(realisation.after.high)}).`,
      ...(of.visits === null ? [] : [visits === 0
        ? 'Minutes: no visit was timed; the time model stays.'
        : `Minutes: ${String(visits)} timed ${visits === 1 ? 'visit' : 'visits'} took ${recorded.toFixed(2)} of the planned minutes; weighed with the time model, a re-plan takes its minutes times ${factor.toFixed(2)}.`]),
      defects.panes === 0 ? 'Defects: no pane is noted as done.' : `Defects: ${String(defects.defects)} on ${String(defects.panes)} panes; with the expected ${percent(defects.expected)} counting as twenty panes, ${percent(defects.share)} are taken to be done again.`,
    ],
  };
}

/** What looking back from a plan needs: its job, and every option that was valued. */
export interface LookBack {
  readonly job: BillsJob;
  readonly options: readonly FilmOption[];
}

/** The review with what the bills after the work say weighed in for every dwelling; as it was where they say nothing. */
export function learnedReview(review: BillsReview, of: LookBack): BillsReview {
  const { portfolio } = of.job;
  const bills = billsOf(of.job);
  if (bills.every((b) => b.installed === null)) return review;
  const byDwelling = grouped(of.options, (o) => o.dwelling);
  const done = doneOptions(portfolio.siteRecords, (d) => byDwelling.get(d) ?? []);
  const verification = didItPay(bills, { heats: heatsByWire(portfolio), modelledShareOfCooling: modelledShareOfCooling(done) });
  const taught = learned({ records: portfolio.siteRecords, verification, before: review.plan, done, visits: null, timeModel: of.job.catalogue.timeModel, defaultOf: defaultsOf(of.job.catalogue) });
  const { realisation } = verification;
  if (realisation === null) return { ...review, verification, learned: taught };
  const after = (r: StatedRealisation): StatedRealisation => learnedStated(r, realisation);
  return { ...review, verification, learned: taught, plan: after(review.plan), uncalibrated: after(review.uncalibrated), byDwelling: Object.fromEntries(Object.entries(review.byDwelling).map(([d, r]) => [d, after(r)])) };
}
