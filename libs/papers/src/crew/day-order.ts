import type { Plan, WorkOrder } from '#planning';

const natural = new Intl.Collator('en', { numeric: true });
const NO_DAY = '9999';

/** Place of each order in the calendar: building by building within a day, as the crew walks; later parts of long work do not count. */
function walkOf(plan: Plan): ReadonlyMap<string, string> {
  const walk = new Map<string, string>();
  for (const { day, building, crew, visits } of plan.calendar.days) {
    visits.forEach((v, i) => {
      if (!walk.has(v.workOrder)) walk.set(v.workOrder, [day, building, String(crew).padStart(3, '0'), String(i).padStart(4, '0')].join('|'));
    });
  }
  return walk;
}

/** Work orders as the days bring them: by day, building and the walk of that day; those without a day come last, by year, building and dwelling. */
export function inDayOrder(plan: Plan): WorkOrder[] {
  const walk = walkOf(plan);
  const keys = new Map(plan.workOrders.map((o) => [o, o.day === null ? NO_DAY : (walk.get(o.id) ?? `${o.day}|${o.building}`)]));
  return [...plan.workOrders].sort((a, b) => {
    const [first, second] = [keys.get(a)!, keys.get(b)!];
    if (first !== second) return first < second ? -1 : 1;
    return natural.compare(a.phase, b.phase) || natural.compare(a.building, b.building) || natural.compare(a.dwelling, b.dwelling) || natural.compare(a.id, b.id);
  });
}
