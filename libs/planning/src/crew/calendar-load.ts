import type { Phase } from '#calc';
import { grouped } from '../grouped.js';
import { type PlanFinding, toldFinding } from '../plan/plan-finding.js';
import { told } from '../words/told.js';
import { type CalendarRequest, later } from './calendar-request.js';
import type { CalendarLoad } from './calendar-types.js';
import type { CrewPart } from './crew-part.js';

/** Days and person-minutes of a phase, those of the own crews alone; what is expected to fall empty is said of all its buildings. */
export function loadOf(phase: Phase, { own, hired }: { readonly own: CrewPart; readonly hired: CrewPart }): CalendarLoad {
  const { of, book } = own;
  const keptIn = (building: string): number => [...own.forMoveOut, ...hired.forMoveOut].filter((o) => o.order.phase === phase.id && o.building.id === building).length;
  const orders = own.opens.filter((o) => o.order.phase === phase.id);
  const sum = (end: 'low' | 'best' | 'high'): number => Math.round(orders.reduce((total, o) => total + o.order.minutes[end], 0));
  const used = book.booked().filter((d) => d.phase === phase.id).length;
  const from = later(phase.firstDay, of.madeOn);
  return {
    phase: phase.id,
    daysOpen: book.days.filter((d) => d >= from && d <= phase.lastDay).length * of.hours.crews,
    daysUsed: used,
    reserveDays: Math.ceil(of.noAccess.share * used),
    personMinutes: { low: sum('low'), best: sum('best'), high: sum('high') },
    expectedEmpty: [...own.expected, ...hired.expected].filter((e) => e.phase === phase.id).map(({ phase: _, window: _window, orders: _orders, ...each }) => ({ ...each, kept: keptIn(each.building) })),
  };
}

/** Phases that run in the same days share the crew: their days and reserves are looked at together. */
export function overfull(loads: readonly CalendarLoad[], of: CalendarRequest): PlanFinding[] {
  const phase = (id: string): Phase => of.phases.find((p) => p.id === id)!;
  return [...grouped(loads, (l) => `${phase(l.phase).firstDay}|${phase(l.phase).lastDay}`).values()].flatMap((same): PlanFinding[] => {
    const total = (part: (l: CalendarLoad) => number): number => same.reduce((sum, l) => sum + part(l), 0);
    const [used, reserve, open] = [total((l) => l.daysUsed), total((l) => l.reserveDays), same[0]!.daysOpen];
    if (used + reserve <= open) return [];
    const text = told('calendar.overfull', { used: told('count.crewDays', { count: used }), reserve: told('count.crewDays', { count: reserve }), open: told('count.crewDays', { count: open }) });
    return [toldFinding({ severity: 'warning', subject: same.map((l) => l.phase).join(', ') }, text, told('calendar.overfull.toDo'))];
  });
}
