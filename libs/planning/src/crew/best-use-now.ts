import type { Phase } from '#calc';
import type { Candidate } from '../choice/candidate.js';
import { optionWords } from '../choice/option-words.js';
import { locksAllow } from '../choice/selection-problem.js';
import { filmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import { foundTasks, valuedOptions } from '../options/valued-options.js';
import { grouped, sortedBy } from '../grouped.js';
import { handLocks } from '../known/hand-locks.js';
import { knownPortfolio } from '../known/known-portfolio.js';
import { withTrueBearings } from '../known/true-bearings.js';
import { defaultsOf, type PlanJob } from '../job/plan-job.js';
import { rollPricing, settingsInForce } from '../job/plan-settings.js';
import { planTerms } from '../job/plan-terms.js';
import type { FilmCut } from '../rolls/cut-types.js';
import { studyYears } from '../plan/settled.js';
import type { RollPricing } from '../rolls/price-by-rolls.js';
import { cutFilm, type StockRoll } from '../rolls/cut-list.js';
import { skyOnFacades } from '../sky/sky-on-facades.js';
import type { Workers } from '../workers.js';

/** So many hours, these dwellings open, this film on the shelf. */
export interface NowQuestion {
  readonly hours: number;
  readonly dwellings: readonly string[];
  readonly stock: readonly StockRoll[];
}

/** One way to use the time: options of different dwellings that fit the minutes and the film. */
export interface NowUse {
  readonly options: readonly { readonly dwelling: string; readonly option: string; /** Film and sides in words. */ readonly words: string; readonly film: string; readonly panes: number; readonly minutes: { readonly low: number; readonly best: number; readonly high: number }; readonly yearlyCooling_cents: number }[];
  readonly minutes: number;
  /** Net present value of all payers, the film on the shelf counted as paid. */
  readonly value_cents: number;
  readonly cuts: readonly FilmCut[];
}

export interface NowAnswer {
  /** Person-minutes there are once loading, parking and keys of each building are taken off. */
  readonly personMinutes: number;
  readonly uses: readonly NowUse[];
  readonly why: string | null;
}

/** Ways tried at the cutting table, best value first, and ways told. */
const MOST_TRIED = 400;
const MOST_TOLD = 5;

interface Scored {
  readonly option: FilmOption;
  readonly value_cents: number;
}

/** Every choice of at most one option a dwelling, best value first; more than a few dwellings keep their best dozen options each. */
function ways(byDwelling: readonly (readonly Scored[])[], most_min: number): Scored[][] {
  let all: Scored[][] = [[]];
  for (const options of byDwelling) {
    const kept = [...options].sort((a, b) => b.value_cents - a.value_cents || (a.option.id < b.option.id ? -1 : 1)).slice(0, byDwelling.length > 3 ? 12 : 40);
    all = all.flatMap((way) => [way, ...kept.map((o) => [...way, o])]).filter((way) => way.reduce((sum, o) => sum + o.option.minutes.best, 0) <= most_min);
    if (all.length > 20_000) all = all.sort((a, b) => worth(b) - worth(a)).slice(0, 20_000);
  }
  return all.filter((way) => way.length > 0).sort((a, b) => worth(b) - worth(a));
}

const worth = (way: readonly Scored[]): number => way.reduce((sum, o) => sum + o.value_cents, 0);

/** Cuts a way from the film on the shelf alone; null where it does not fit. */
function cutFromShelf(way: readonly Scored[], at: { readonly pricing: RollPricing; readonly stock: readonly StockRoll[]; readonly phase: Phase }): FilmCut[] | null {
  const { pricing } = at;
  const windows = way.flatMap(({ option }) => pricing.windowsOf({ option } as Candidate).map((window) => ({ dwelling: option.dwelling, window })));
  const cuts: FilmCut[] = [];
  for (const [film, own] of grouped(sortedBy(windows, (w) => w.window.film), (w) => w.window.film)) {
    const sheet = pricing.films.get(film);
    if (sheet === undefined) return null;
    const widths = way.map((o) => pricing.buildings.get(o.option.building)?.widestRoll_mm ?? null).filter((w) => w !== null);
    const { cut } = cutFilm({ phase: 'now', ownerEntity: at.phase.ownerEntity, film, mayRotate: pricing.mayRotate(sheet), windows: own, offers: [], stock: at.stock.filter((s) => s.film === film), terms: pricing.terms, widest_mm: widths.length === 0 ? null : Math.min(...widths) });
    if (cut.unplaced.length > 0) return null;
    cuts.push(cut);
  }
  return cuts;
}

/** The best uses of some hours in some dwellings with the film on the shelf, best first. */
export async function bestUseNow(asked: PlanJob, work: Workers, question: NowQuestion): Promise<NowAnswer> {
  const wanted = new Set(question.dwellings);
  const strange = question.dwellings.filter((id) => !asked.portfolio.dwellings.some((d) => d.id === id));
  if (strange.length > 0) throw new RangeError(`dwelling must be in the portfolio, got ${strange.join(', ')}`);
  const turned = withTrueBearings(asked);
  const job = { ...turned, portfolio: { ...turned.portfolio, dwellings: turned.portfolio.dwellings.filter((d) => wanted.has(d.id)) } };
  const known = knownPortfolio(job.portfolio, defaultsOf(job.catalogue));
  const terms = planTerms(job.portfolio.settings, defaultsOf(job.catalogue));
  const skies = skyOnFacades(known, job.weather, job.catalogue.assumptions.value('albedo').value);
  const locks = handLocks(job.portfolio.locks.filter((l) => l.direction === 'out'), known); // a lock in does not bind an afternoon
  const choices = filmChoices(known, skies, { job, terms, locks });
  const settings = settingsInForce(job, known, { terms, locks });
  const tasks = await foundTasks(known, { skies, choices, work, mixed: false, years: studyYears(settings, choices) });
  const valued = await valuedOptions(tasks, { choices, work });
  const phase = settings.phases.find((p) => p.firstDay <= job.madeOn && job.madeOn <= p.lastDay) ?? settings.phases[0];
  const buildings = new Set(known.dwellings.map((d) => d.building));
  const mobilisation = [...buildings].reduce((sum, id) => sum + settings.visit(settings.buildings.get(id)!).minutes, 0);
  const size = job.portfolio.settings.crewSize ?? defaultsOf(job.catalogue)<number>('crewSize').value;
  const personMinutes = Math.max(0, question.hours * 60 * size - mobilisation);
  if (phase === undefined) return { personMinutes, uses: [], why: 'the portfolio has no phase to value the work in' };
  const films = new Set(question.stock.map((s) => s.film));
  const ready = valued.options.filter((o) => o.waitsFor.length === 0 && o.from <= job.madeOn && o.films.every((f) => films.has(f)) && locksAllow(o, phase, locks.chosen.filter((l) => l.subject === o.dwelling)));
  const scored = ready.map((option): Scored => ({ option, value_cents: settings.valueIn(option, phase).whole_cents + option.cost.film_cents * (1 + terms.materialTaxShare) })).filter((s) => s.value_cents > 0);
  const uses: NowUse[] = [];
  for (const way of ways([...grouped(scored, (s) => s.option.dwelling).values()], personMinutes).slice(0, MOST_TRIED)) {
    const cuts = cutFromShelf(way, { pricing: rollPricing(job, settings, { valued, choices }), stock: question.stock, phase });
    if (cuts === null) continue;
    uses.push({
      options: way.map(({ option }) => ({ dwelling: option.dwelling, option: option.id, words: optionWords(option), film: option.film, panes: option.paneCount, minutes: option.minutes, yearlyCooling_cents: Math.round(option.yearlyCooling_cents) })),
      minutes: Math.round(way.reduce((sum, o) => sum + o.option.minutes.best, 0)),
      value_cents: Math.round(worth(way)),
      cuts,
    });
    if (uses.length === MOST_TOLD) break;
  }
  const none = scored.length === 0 ? 'no option of these dwellings is ready, pays and has its film on the shelf' : 'nothing fits both the minutes and the film on the shelf';
  return { personMinutes, uses, why: uses.length > 0 ? null : none };
}
