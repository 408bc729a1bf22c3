import type { Plan } from '../plan/plan.js';
import { ENGLISH, type Language, tell, told, type Told, toldWord } from '../words/told.js';
import type { WorkOrder } from './work-order-types.js';
import type { CalendarDay, CalendarVisit } from './calendar-types.js';

type CalendarPlan = Pick<Plan, 'id' | 'revision' | 'name' | 'madeOn' | 'calendar' | 'workOrders' | 'buildings'>;

/** World time where the clock rule of the building is known, else wall-clock time without a zone, whatever zone the reader's calendar has. */
const at = ({ day, utcOffset_h = 0 }: CalendarDay, clock: string): Date => new Date(Date.parse(`${day}T${clock}:00Z`) - utcOffset_h * 3_600_000);

const idOf = (plan: CalendarPlan, visit: CalendarVisit): string => `${plan.id}-${visit.workOrder}-${String(visit.part)}`.replace(/[^A-Za-z0-9.-]+/g, '-') + '@film-rollout';

function wordsOf(plan: CalendarPlan, at: { readonly day: CalendarDay; readonly visit: CalendarVisit }): Told[] {
  const { day, visit } = at;
  const order = plan.workOrders.find((o) => o.id === visit.workOrder);
  const { low, best, high } = visit.personMinutes;
  const shade = visit.shade.map((s) => told('event.shade', { side: toldWord('side', s.side), from: s.from ?? told('event.sunrise'), until: s.until ?? told('event.sunset'), clock: told(s.clock === 'daylight' ? 'event.clock.daylight' : s.clock === 'standard' ? 'event.clock.standard' : 'event.clock.unknown') }));
  const film = (o: WorkOrder): Told => told('event.film', { panes: told('count.panes', { count: o.panes.length }), film: o.told?.film ?? o.film });
  return [
    day.isContractor === true ? told('event.contractor', { phase: day.phase, plan: plan.id, revision: plan.revision }) : told('event.crew', { crew: day.crew, phase: day.phase, plan: plan.id, revision: plan.revision }),
    told('event.minutes', { best, low, high }),
    ...(order === undefined ? [] : [film(order), order.told?.access ?? { key: 'access', otherwise: order.access }]),
    told('event.notice', { day: visit.noticeBy }),
    ...(visit.isForMoveOut === true ? [told('event.forMoveOut')] : []),
    ...shade,
  ];
}

function titleOf({ isContractor }: CalendarDay, visit: CalendarVisit): Told {
  const plain = told('event.title', { dwelling: visit.dwelling });
  const title = visit.parts > 1 ? told('event.part', { title: plain, part: visit.part, parts: visit.parts }) : plain;
  const known = visit.isEmpty ? told('event.empty', { title }) : title;
  return isContractor === true ? told('event.byContractor', { title: known }) : known;
}

/** The package writes the calendar's own name as it is given; a TEXT value escapes these signs (RFC 5545, 3.3.11). */
const escaped = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n');

/**
 * The working days as an iCalendar file (RFC 5545): one event a visit, in world time (UTC) where the
 * clock rule of its building is known, else in floating wall-clock time. Stamp and ids come from the plan, so the same plan
 * gives the same bytes, and a calendar that reads a new file of the plan keeps its events apart from others.
 */
export async function calendarFile(plan: CalendarPlan, of: Language = ENGLISH): Promise<string> {
  const { default: ical } = await import('ical-generator');
  const file = ical({ name: escaped(tell(told('event.name', { plan: plan.name }), of)), prodId: { company: 'film-rollout', product: 'rollout', language: of.language.slice(0, 2).toUpperCase() } });
  const places = new Map(plan.buildings.map((b) => [b.id, b.name]));
  for (const day of plan.calendar.days) {
    for (const visit of day.visits) {
      file.createEvent({
        id: idOf(plan, visit),
        stamp: new Date(`${plan.madeOn.slice(0, 10)}T00:00:00Z`),
        sequence: plan.revision - 1,
        start: at(day, visit.start),
        end: at(day, visit.end),
        floating: day.utcOffset_h === undefined,
        summary: tell(titleOf(day, visit), of),
        location: places.get(day.building) ?? day.building,
        description: wordsOf(plan, { day, visit }).map((sentence) => tell(sentence, of)).join('\n'),
      });
    }
  }
  return file.toString();
}
