import type { CalendarLoad } from '../crew/calendar-types.js';
import type { Plan } from '../plan/plan.js';
import { type Figure, part } from './figure.js';
import { digits } from './receipt-numbers.js';
import { BY_HAND, type Receipt, type ReceiptStep, workedOut } from './receipt.js';

function minutesReceipt(plan: Plan, load: CalendarLoad, of: Pick<Figure, 'id' | 'title'>): Receipt {
  // Plans kept before the contractor had days of his own count his orders with those of the own crew.
  const hired = new Set(plan.calendar.contractorTold === undefined ? [] : plan.buildings.filter((b) => b.crew === 'contractor').map((b) => b.id));
  const orders = plan.workOrders.filter((o) => o.phase === load.phase && !hired.has(o.building));
  const steps = orders.map((o): ReceiptStep => ({ label: o.dwelling, substituted: `${digits(o.minutes.best)} min`, value: o.minutes.best, unit: 'min' }));
  const worked = Math.round(steps.reduce((sum, s) => sum + s.value, 0));
  return {
    figure: of.id, title: of.title, value: load.personMinutes.best, unit: 'min', formula: 'person-minutes of the phase = Σ work orders of the own crew, rounded to the minute; loading, parking and keys, once a day and building, stand at each day',
    steps: [...steps, { label: 'sum', substituted: `${String(steps.length)} orders, rounded = ${digits(worked)} min`, value: worked, unit: 'min' }], rows: [], assumptions: [], compute: null, computeWhy: BY_HAND, worked: workedOut(load.personMinutes.best, worked, 'orders and load do not close'),
    see: plan.lines.filter((l) => l.phase === load.phase).slice(0, 4).map((l) => `line/${l.dwelling}/minutes`),
  };
}

/** Person-minutes of the working days of each phase. */
export const calendarFigures = (plan: Plan): Figure[] =>
  plan.calendar.load.map((load) => {
    const about = { id: `calendar/${part(load.phase)}/minutes`, title: `Person-minutes on the calendar of ${load.phase}` };
    return { ...about, receipt: ({ plan: of }) => minutesReceipt(of, load, about) };
  });
