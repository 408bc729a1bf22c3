import type { Plan } from '../plan/plan.js';
import type { CalendarDay, CalendarVisit } from './calendar-types.js';

type CalendarPlan = Pick<Plan, 'id' | 'revision' | 'name' | 'madeOn' | 'calendar' | 'workOrders' | 'buildings'>;

/** Wall-clock time without a zone: the crew's own clock, whatever zone the reader's calendar has. */
const at = (day: string, clock: string): Date => new Date(`${day}T${clock}:00Z`);

const idOf = (plan: CalendarPlan, visit: CalendarVisit): string => `${plan.id}-${visit.workOrder}-${String(visit.part)}`.replace(/[^A-Za-z0-9.-]+/g, '-') + '@film-rollout';

function wordsOf(plan: CalendarPlan, day: CalendarDay, visit: CalendarVisit): string {
  const order = plan.workOrders.find((o) => o.id === visit.workOrder);
  const { low, best, high } = visit.personMinutes;
  const shade = visit.shade.map((s) => `${s.side}: shade ${s.from ?? 'from sunrise'} to ${s.until ?? 'sunset'}, standard time`);
  return [
    `Crew ${String(day.crew)}, phase ${day.phase}, plan ${plan.id} revision ${String(plan.revision)}`,
    `Person-minutes ${String(best)} (${String(low)} to ${String(high)})`,
    ...(order === undefined ? [] : [`${String(order.panes.length)} panes, film ${order.film}`, order.access]),
    `Notice out by ${visit.noticeBy}`,
    ...shade,
  ].join('\n');
}

/** The package writes the calendar's own name as it is given; a TEXT value escapes these signs (RFC 5545, 3.3.11). */
const escaped = (text: string): string => text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n');

/**
 * The working days as an iCalendar file (RFC 5545): one event a visit, wall-clock times. Stamp and ids come from the plan, so the same plan
 * gives the same bytes, and a calendar that reads a new file of the plan keeps its events apart from others.
 */
export async function calendarFile(plan: CalendarPlan): Promise<string> {
  const { default: ical } = await import('ical-generator');
  const file = ical({ name: escaped(`${plan.name}: film work`), prodId: { company: 'film-rollout', product: 'rollout', language: 'EN' } });
  const places = new Map(plan.buildings.map((b) => [b.id, b.name]));
  for (const day of plan.calendar.days) {
    for (const visit of day.visits) {
      file.createEvent({
        id: idOf(plan, visit),
        stamp: new Date(`${plan.madeOn.slice(0, 10)}T00:00:00Z`),
        sequence: plan.revision - 1,
        start: at(day.day, visit.start),
        end: at(day.day, visit.end),
        floating: true,
        summary: `Film ${visit.dwelling}${visit.parts > 1 ? ` (${String(visit.part)} of ${String(visit.parts)})` : ''}${visit.isEmpty ? ', empty' : ''}`,
        location: places.get(day.building) ?? day.building,
        description: wordsOf(plan, day, visit),
      });
    }
  }
  return file.toString();
}
