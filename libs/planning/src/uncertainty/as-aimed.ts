import { type Phase, quantileOf } from '#calc';
import type { BillsReview } from '../bills/review.js';
import { realisationOfDwelling } from '../bills/with-bills.js';
import type { PlanJob } from '../job/plan-job.js';
import type { PlanSettingsInForce } from '../job/plan-settings.js';
import type { FilmChoices } from '../options/film-choices.js';
import type { FilmOption, PhaseValue } from '../options/option.js';
import type { ValuedOptions } from '../options/valued-options.js';
import type { Workers } from '../workers.js';
import { drawOrder } from './draw-book.js';
import { type DrawnSavings } from './drawn-option.js';
import { drawnValue_cents, type FoundShare, netValues_cents } from './drawn-value.js';
import { drawnOptions, founded } from './drawn-options.js';
import { foundDeviations, foundShares } from './found-share.js';

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

/** The value nine draws in ten reach, in both views, by option and phase. */
function nineInTen(drawn: ReadonlyMap<string, DrawnSavings>, of: AimRequest & { readonly order: ReturnType<typeof drawOrder>; readonly shareOf: (option: FilmOption) => FoundShare }): (option: FilmOption, phase: Phase) => PhaseValue {
  const kept = new Map<string, PhaseValue>();
  const { terms, endYearOf } = of.settings;
  return (option, phase) => {
    const key = `${option.id}|${phase.id}`;
    let value = kept.get(key);
    if (value === undefined) {
      const savings = drawn.get(option.id);
      if (savings === undefined) throw new RangeError(`option must be among the drawn, got ${option.id}`);
      const inView = (view: 'whole' | 'owner'): number => {
        const under = drawnValue_cents(savings, phase, { order: of.order, terms: { ...terms, view }, endYear: endYearOf(option.building) });
        return quantileOf(netValues_cents(under, of.shareOf(option)).sort(), 0.1);
      };
      kept.set(key, (value = { phase: phase.id, whole_cents: inView('whole'), owner_cents: inView('owner') }));
    }
    return value;
  };
}

/**
 * The options as the choice aims: at the middle they stay as they are; at nine in ten only options that some draw may choose are left, each
 * worth what nine draws in ten reach. The nine-in-ten values of lines add up to less than that of the plan, since dwellings do not all err
 * the same way: the choice is careful line by line.
 */
export async function asAimed(valued: ValuedOptions, of: AimRequest): Promise<Aimed> {
  if ((of.job.aim ?? 'middle') === 'middle') return { valued, settings: of.settings };
  const { job, choices, settings } = of;
  const order = drawOrder(job.catalogue.uncertainInputs, { founded: founded(choices), seed: job.outlook?.seed ?? 1, draws: job.outlook?.draws ?? DRAWS });
  const soon = (option: FilmOption): number => {
    const phase = settings.phases.find((p) => p.ownerEntity === settings.ownerOf(option.building));
    if (phase === undefined) return 0;
    const value = settings.valueIn(option, phase);
    return settings.terms.view === 'owner' ? value.owner_cents : value.whole_cents;
  };
  const drawn = await drawnOptions(valued, { choices, order, taken: new Set(), valueOf: soon, work: of.work, progress: job.progress });
  const deviations = foundDeviations(order);
  const asFound = job.portfolio.settings.realisation === 'as-found';
  const shareOf = (option: FilmOption): FoundShare => (asFound ? foundShares(realisationOfDwelling(of.bills, option.dwelling), deviations) : null);
  const waiting = valued.options.filter((o) => o.waitsFor.length > 0);
  const byId = new Map(drawn.map((d) => [d.option.id, d]));
  const careful = nineInTen(byId, { ...of, order, shareOf });
  return {
    valued: { ...valued, options: [...drawn.map((d) => d.option), ...waiting] },
    settings: { ...settings, valueIn: (option, phase) => (byId.has(option.id) ? careful(option, phase) : settings.valueIn(option, phase)) },
  };
}
