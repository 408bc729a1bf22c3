import type { AssumedValue, Building, PlanSettings, Portfolio, TimeModel } from '#calc';
import type { DwellingTask } from '../dwelling/dwelling-task.js';
import { type AssumptionBook, assumptionBook, type DefaultOf } from '../job/assumption-book.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { PricedPhase } from '../rolls/price-by-rolls.js';
import type { SkiesOnFacades } from '../sky/sky-on-facades.js';
import { calendarOf } from './calendar.js';
import { type CalendarRequest, isHired } from './calendar-request.js';
import type { PlanCalendar } from './calendar-types.js';
import type { CrewHours } from './day-book.js';
import { shadeBook } from './shade-book.js';
import { utcOffset_h, wallClocks } from './wall-clock.js';
import { redoOrders } from './redo-orders.js';
import type { SettledWork } from '../record/settled-work.js';
import type { WorkOrder } from './work-order-types.js';
import { type DayFound, openOrders, orderOnDay, type WorkOrderRequest } from './work-orders.js';

/** What crew work is made from, beside the priced phases. */
export interface CrewRequest extends Pick<WorkOrderRequest, 'buildings' | 'films' | 'notice_h' | 'terms' | 'windowsOf'> {
  readonly portfolio: Pick<Portfolio, 'settings' | 'moveOuts'>;
  readonly visit: (building: Building) => { readonly minutes: number };
  /** ISO date. */
  readonly madeOn: string;
  readonly skies: SkiesOnFacades;
  /** Every dwelling with the panels of its windows. */
  readonly tasks: readonly Pick<DwellingTask, 'dwelling' | 'panels'>[];
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

/** Hours of the crew: the settings, or the assumptions where they are blank. */
function crewHours(settings: PlanSettings, book: AssumptionBook, defaultOf: DefaultOf): CrewHours {
  const take = (field: string, given: number | null, key: string): number => book.take({ group: 'crew', field }, given, defaultOf<number>(key));
  return { crews: take('crews side by side', settings.crews ?? null, 'crews'), size: take('persons of the crew', settings.crewSize, 'crewSize'), days_wk: take('days a week on film', settings.crewDays_wk, 'crewDays_wk'), hours_day: take('hours a day at the glass', settings.crewHours_day, 'crewHours_day') };
}

/** Crews of the contractor, where he has work: nobody has said how many, so the assumed number and size are taken. */
function contractorCrews(hasWork: boolean, book: AssumptionBook, defaultOf: DefaultOf): Pick<CalendarRequest, 'contractor'> {
  if (!hasWork) return {};
  const take = (field: string, key: string): number => book.take({ group: 'contractor', field }, null, defaultOf<number>(key));
  return { contractor: { crews: take('crews side by side', 'crews'), size: take('persons of the crew', 'crewSize') } };
}

/** Loading, parking and keys on a day; a contractor's crew has them too, though what he asks for a visit pays for them. */
function mobilisation({ defaultOf, visit }: Pick<CrewRequest, 'defaultOf' | 'visit'>): CalendarRequest['mobilisation_min'] {
  return (building) => (building.crew === 'contractor' ? (building.visitMinutes ?? defaultOf<number>('visitMinutes').value) : visit(building).minutes);
}

/** Last day for which the survey knows move-outs of a building. */
function lastMoveOuts({ portfolio, tasks }: CrewRequest): (building: Building) => string | null {
  const buildingOf = new Map(tasks.map((t) => [t.dwelling.id, t.dwelling.building]));
  const last = new Map<string, string>();
  for (const { dwelling, out } of portfolio.moveOuts) {
    const building = buildingOf.get(dwelling);
    if (building !== undefined && out > (last.get(building) ?? '')) last.set(building, out);
  }
  return (building) => last.get(building.id) ?? null;
}

/** Work orders of all phases, each on its day, and the calendar they stand in. */
export function crewWork(phases: readonly PricedPhase[], of: CrewRequest): CrewWork {
  const { defaultOf } = of;
  const book = assumptionBook();
  const common = new Set(of.tasks.filter((t) => t.dwelling.kind === 'common area').map((t) => t.dwelling.id));
  const clockOf = wallClocks(of.buildings, of.tasks);
  const request: WorkOrderRequest = {
    ...of,
    moveOuts: of.portfolio.moveOuts,
    madeOn: of.madeOn,
    shadeOn: shadeBook(of.tasks, { skies: of.skies, clockOf, sunlitShare: defaultOf<number>('shadeSunlitShare').value }),
    kit: { slip_L_m2: defaultOf<number>('slip_L_m2').value, panesPerBlade: defaultOf<number>('panesPerBlade').value },
  };
  const again = of.settled === null ? [] : redoOrders(phases.map((p) => p.phase), { ...request, settled: of.settled });
  const open = [...openOrders(phases, request), ...again];
  const { source } = defaultOf<number>('noAccessShare');
  const isNew = (of.settled?.time.visits ?? 0) === 0 && book.take({ group: 'crew', field: 'first day of a new crew still to come' }, of.portfolio.settings.crewIsNew ?? null, defaultOf<boolean>('crewIsNew'));
  const { calendar, findings } = calendarOf(open, {
    phases: phases.map((p) => p.phase),
    hours: crewHours(of.portfolio.settings, book, defaultOf),
    noWork: of.portfolio.settings.noWork,
    ...contractorCrews(open.some(isHired), book, defaultOf),
    mobilisation_min: mobilisation(of),
    noAccess: { share: book.take({ group: 'crew', field: 'visits where nobody opens' }, null, defaultOf<number>('noAccessShare')), source },
    madeOn: of.madeOn,
    knownUntil: lastMoveOuts(of),
    isCommon: (dwelling) => common.has(dwelling),
    shadeOn: request.shadeOn,
    utcOffset_h: (building, day) => utcOffset_h(building, clockOf(building).ahead_h(day)),
    firstDayFactor: isNew ? of.timeModel.firstDayFactor : 1,
  });
  const dayOf = new Map([...calendar.days].reverse().flatMap((d) => d.visits.map((v): [string, DayFound] => [v.workOrder, { day: d.day, isEmpty: v.isEmpty }])));
  return { workOrders: open.map((o) => orderOnDay(o, dayOf.get(o.order.id) ?? null, request)), calendar, findings, assumed: book.list() };
}
