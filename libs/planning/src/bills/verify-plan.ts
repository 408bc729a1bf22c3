import type { SiteRecord } from '#calc';
import { grouped } from '../grouped.js';
import { defaultsOf } from '../job/plan-job.js';
import type { Plan } from '../plan/plan.js';
import { type BillsJob, billsOf } from './fit-bills.js';
import { didItPay, type Verification } from './did-it-pay.js';
import { whatHappened } from '../record/happened.js';
import { doneOptions, heatsByWire, learned, modelledShareOfCooling, type TimedVisit } from './learned.js';
import type { Learned } from './review.js';

/** What the filmed lines of a plan cost and were modelled to save, beside what bills show of it. */
export interface VerifiedMoney {
  readonly lines: number;
  readonly cost_cents: number;
  readonly modelled_cents: number;
  /** A year, by the share of the modelled saving that bills show. */
  readonly shown_cents: { readonly low: number; readonly middle: number; readonly high: number };
  readonly words: string;
}

/** A meter held behind the glass before and after: the film itself. */
export interface FilmReading {
  readonly building: string;
  readonly azimuth_deg: number;
  readonly glazing: string;
  readonly film: string | null;
  readonly taken: string;
  /** What the filmed glass lets through of what the bare glass does, by the meter. */
  readonly passes: number;
}

/** Everything `verify` says. */
export interface VerifyReview {
  readonly plan: string | null;
  readonly verification: Verification;
  readonly money: VerifiedMoney | null;
  readonly filmReadings: readonly FilmReading[];
  readonly learned: Learned;
}

const dollars = (cents: number): string => `$${Math.round(cents / 100).toLocaleString('en-US')}`;

function moneyOf(plan: Plan, filmed: ReadonlySet<string>, verification: Verification): VerifiedMoney | null {
  const lines = plan.lines.filter((l) => filmed.has(l.dwelling));
  if (lines.length === 0 || verification.realisation === null) return null;
  const cost_cents = lines.reduce((sum, l) => sum + l.option.cost.total_cents, 0);
  const modelled_cents = lines.reduce((sum, l) => sum + (l.option.segments[0]?.saving.cooling_cents ?? 0) / (l.option.counted ?? 1), 0);
  const { low, factor, high } = verification.realisation;
  const shown_cents = { low: low * modelled_cents, middle: factor * modelled_cents, high: high * modelled_cents };
  const years = (cents: number): string => (cents > 0 ? `${(cost_cents / cents).toFixed(1)} years` : 'never');
  return { lines: lines.length, cost_cents, modelled_cents, shown_cents, words: `The filmed lines cost ${dollars(cost_cents)} and were modelled to save ${dollars(modelled_cents)} a year; bills show ${dollars(shown_cents.middle)} (${dollars(shown_cents.low)} to ${dollars(shown_cents.high)}), which pays the film back in ${years(shown_cents.middle)} (${years(shown_cents.high)} to ${years(shown_cents.low)}).` };
}

/** Timed visits of dwellings that are done and need not be done again. */
function timedVisits(plan: Plan, records: readonly SiteRecord[]): TimedVisit[] {
  const { done, redo } = whatHappened(plan, records);
  return done.flatMap((d) => (d.real_min !== null && d.real_min > 0 && d.planned_min > 0 && !redo.some((r) => r.dwelling === d.dwelling) ? [{ model_min: d.planned_min, real_min: d.real_min }] : []));
}

/** Did it pay, and what was learned: bills and site records held against a plan made before the work; without a plan, against nothing. */
export function verifyPlan(job: BillsJob, plan: Plan | null): VerifyReview {
  const bills = billsOf(job);
  const { siteRecords, readings } = job.portfolio;
  const lines = grouped(plan?.lines ?? [], (l) => l.dwelling);
  const done = doneOptions(siteRecords, (d) => (lines.get(d) ?? []).map((l) => l.option));
  const verification = didItPay(bills, { heats: heatsByWire(job.portfolio), modelledShareOfCooling: modelledShareOfCooling(done) });
  const filmed = new Set(bills.filter((b) => b.installed !== null).flatMap((b) => b.dwellings.filter((d) => done(d) !== null)));
  return {
    plan: plan?.id ?? null,
    verification,
    money: plan === null ? null : moneyOf(plan, filmed, verification),
    filmReadings: readings.flatMap((r) => (r.bare_W_m2 !== null && r.bare_W_m2 > 0 && r.filmed_W_m2 !== null ? [{ building: r.building, azimuth_deg: r.azimuth_deg, glazing: r.glazing, film: r.film, taken: r.taken, passes: r.filmed_W_m2 / r.bare_W_m2 }] : [])),
    learned: learned({ records: siteRecords, verification, before: plan?.bills?.plan ?? null, done, visits: plan === null ? [] : timedVisits(plan, siteRecords), timeModel: job.catalogue.timeModel, defaultOf: defaultsOf(job.catalogue) }),
  };
}
