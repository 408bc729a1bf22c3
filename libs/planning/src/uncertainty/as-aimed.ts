import { chooseUnderCaps, workedCaps } from '../choice/choose-under-caps.js';
import { inView } from '../choice/selection-problem.js';
import type { BillsReview } from '../bills/review.js';
import { realisationOfDwelling } from '../bills/with-bills.js';
import type { PlanJob } from '../job/plan-job.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption } from '../options/option.js';
import type { ValuedOptions } from '../options/valued-options.js';
import type { Workers } from '../workers.js';
import { drawOrder } from './draw-book.js';
import type { FoundShare } from './drawn-value.js';
import { drawnOptions, founded } from './drawn-options.js';
import { foundDeviations, foundShares } from './found-share.js';
import { robustValues } from './robust-values.js';

/** What a choice aims at, and what it is made of. */
export interface AimRequest {
  readonly job: PlanJob;
  readonly choices: FilmChoices;
  readonly settings: PlanSettingsInForce;
  readonly bills: BillsReview;
  readonly work: Workers;
}

/** Options and their values as the selection is to see them. */
export interface Aimed {
  readonly valued: ValuedOptions;
  readonly settings: PlanSettingsInForce;
}

/** Draws an aim of nine in ten is made with when the plan asks for none of its own. */
const DRAWS = 200;

/**
 * The options as the choice aims: at the middle they stay as they are; at nine in ten only options that some draw may choose are left, with
 * values that make a plan of which nine draws in ten reach most, see `robustValues`.
 */
export async function asAimed(valued: ValuedOptions, of: AimRequest): Promise<Aimed> {
  if ((of.job.aim ?? 'middle') === 'middle') return { valued, settings: of.settings };
  const { job, choices, settings, work } = of;
  const order = drawOrder(job.catalogue.uncertainInputs, { founded: founded(choices), seed: job.outlook?.seed ?? 1, draws: job.outlook?.draws ?? DRAWS });
  const soon = (option: FilmOption): number => {
    const phase = settings.phases.find((p) => p.ownerEntity === settings.ownerOf(option.building));
    return phase === undefined ? 0 : inView(settings.valueIn(option, phase), settings.terms);
  };
  const { lines } = (await chooseUnderCaps(valued.options, workedCaps(settings.phases, settings.terms), { ...settings, work })).choice;
  const drawn = await drawnOptions(valued, { choices, order, taken: new Set(lines.map((l) => l.option.id)), valueOf: soon, work, progress: job.progress });
  const deviations = foundDeviations(order);
  const asFound = job.portfolio.settings.realisation === 'as-found';
  const shareOf = (option: FilmOption): FoundShare => (asFound ? foundShares(realisationOfDwelling(of.bills, option.dwelling), deviations) : null);
  const robust = await robustValues({ ...settings, drawn, order, shareOf, middle: { valueIn: settings.valueIn, lines }, work });
  const waiting = valued.options.filter((o) => o.waitsFor.length > 0);
  const isDrawn = new Set(drawn.map((d) => d.option.id));
  return {
    valued: { ...valued, options: [...drawn.map((d) => d.option).filter((o) => o.waitsFor.length === 0), ...waiting] },
    settings: { ...settings, valueIn: (option, phase) => (isDrawn.has(option.id) ? robust.valueIn(option, phase) : settings.valueIn(option, phase)) },
  };
}
