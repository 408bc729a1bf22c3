import type { CalendarVisit, Plan, WorkOrder } from '#planning';

/** First day the calendar gives an order, or null where it has none. */
export function visitOf(plan: Plan, order: WorkOrder): { readonly day: string; readonly visit: CalendarVisit } | null {
  for (const { day, visits } of plan.calendar.days) {
    const visit = visits.find((v) => v.workOrder === order.id);
    if (visit !== undefined) return { day, visit };
  }
  return null;
}

/** The dwelling stands empty when the crew comes: by the calendar where it has a day, else as planned. */
export const isEmptyThen = (plan: Plan, order: WorkOrder): boolean => visitOf(plan, order)?.visit.isEmpty ?? order.isEmpty ?? order.access.startsWith('empty');
