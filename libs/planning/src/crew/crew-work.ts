import type { AssumedValue, Building, PlanSettings, Portfolio, Site, TimeModel } from '#calc';
import { horizonOf } from '../dwelling/dwelling-tasks.js';
import { type AssumptionBook, assumptionBook, type DefaultOf } from '../job/assumption-book.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { calendarOf } from './calendar.js';
import type { PlanCalendar } from './calendar-types.js';
import { CREW_WORDS_EN } from './crew-words.js';
import type { CrewHours } from './day-book.js';
import { facadeShade } from './facade-shade.js';
import { redoOrders } from './redo-orders.js';
import type { SettledWork } from '../record/settled-work.js';
import type { ShadeTime, WorkOrder } from './work-order-types.js';
import { type DayFound, openOrders, orderOnDay, type WorkOrderRequest } from './work-orders.js';

/** What crew work is made from, beside the priced phases. */
export interface CrewRequest extends Pick<WorkOrderRequest, 'buildings' | 'films' | 'notice_h' | 'terms' | 'windowsOf'> {
  readonly portfolio: Pick<Portfolio, 'settings' | 'moveOuts'>;
  readonly visit: (building: Building) => { readonly minutes: number };
  /** ISO date. */
  readonly madeOn: string;
  readonly skies: SkiesOnFacades;
  /** Work done on the revision before: its panes to be done again have orders of their own. */
  readonly settled: SettledWork | null;
  readonly timeModel: Pick<TimeModel, 'firstDayFactor'>;
  readonly defaultOf: DefaultOf;
}

/** What the crew stage gives the plan. */
export interface CrewWork {
  readonly workOrders: readonly WorkOrder[];
  readonly calendar: PlanCalendar;
  readonly findings: readonly PlanFinding[];
  readonly assumed: readonly AssumedValue[];
}

/** Shade of a side on a day, worked out once however many dwellings share it. */
function shadeBook(skies: SkiesOnFacades): WorkOrderRequest['shadeOn'] {
  const known = new Map<string, readonly ShadeTime[]>();
  const siteOf = (building: Building): Site | undefined => skies.sites.get(skies.siteOf.get(building.id) ?? '')?.sun.site;
  return (building, azimuth_deg, day) => {
    const site = siteOf(building);
    if (site === undefined) throw new RangeError(`building must have a sky, got ${building.id}`);
    const key = `${building.id}|${String(azimuth_deg)}|${day}`;
    let shade = known.get(key);
    if (shade === undefined) known.set(key, (shade = facadeShade({ site, azimuth_deg, horizon: horizonOf(building, azimuth_deg), day }, CREW_WORDS_EN.shade)));
    return shade;
  };
}

/** Hours of the crew: the settings, or the assumptions where they are blank. */
function crewHours(settings: PlanSettings, book: AssumptionBook, defaultOf: DefaultOf): CrewHours {
  const take = (field: string, given: number | null, key: string): number => book.take({ group: 'crew', field }, given, defaultOf<number>(key));
  return { crews: take('crews side by side', settings.crews ?? null, 'crews'), size: take('persons of the crew', settings.crewSize, 'crewSize'), days_wk: take('days a week on film', settings.crewDays_wk, 'crewDays_wk'), hours_day: take('hours a day at the glass', settings.crewHours_day, 'crewHours_day') };
}

/** Work orders of all phases, each on its day, and the calendar they stand in. */
export function crewWork(phases: readonly PricedPhase[], of: CrewRequest): CrewWork {
  const { defaultOf } = of;
  const book = assumptionBook();
  const words = CREW_WORDS_EN;
  const request: WorkOrderRequest = {
    ...of,
    moveOuts: of.portfolio.moveOuts,
    madeOn: of.madeOn,
    shadeOn: shadeBook(of.skies),
    kit: { slip_L_m2: defaultOf<number>('slip_L_m2').value, panesPerBlade: defaultOf<number>('panesPerBlade').value },
    words,
  };
  const again = of.settled === null ? [] : redoOrders(phases.map((p) => p.phase), { ...request, settled: of.settled });
  const open = [...openOrders(phases, request), ...again];
  const { source } = defaultOf<number>('noAccessShare');
  const isNew = (of.settled?.time.visits ?? 0) === 0 && book.take({ group: 'crew', field: 'first day of a new crew still to come' }, of.portfolio.settings.crewIsNew ?? null, defaultOf<boolean>('crewIsNew'));
  const { calendar, findings } = calendarOf(open, {
    phases: phases.map((p) => p.phase),
    hours: crewHours(of.portfolio.settings, book, defaultOf),
    noWork: of.portfolio.settings.noWork,
    mobilisation_min: (building) => of.visit(building).minutes,
    noAccess: { share: book.take({ group: 'crew', field: 'visits where nobody opens' }, null, defaultOf<number>('noAccessShare')), source },
    madeOn: of.madeOn,
    shadeOn: request.shadeOn,
    firstDayFactor: isNew ? of.timeModel.firstDayFactor : 1,
    words,
  });
  const dayOf = new Map([...calendar.days].reverse().flatMap((d) => d.visits.map((v): [string, DayFound] => [v.workOrder, { day: d.day, isEmpty: v.isEmpty }])));
  return { workOrders: open.map((o) => orderOnDay(o, dayOf.get(o.order.id) ?? null, request)), calendar, findings, assumed: book.list() };
}
