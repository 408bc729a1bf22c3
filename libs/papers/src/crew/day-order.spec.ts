import type { Plan, WorkOrder } from '#planning';
import { inDayOrder } from './day-order.js';

const order = (id: string, day: string | null, building = id.slice(0, 2)) => ({ id, day, building, dwelling: id, phase: 'O/1' }) as WorkOrder;
const day = (on: string, visits: readonly string[], crew = 1) => ({ day: on, building: visits[0]!.slice(0, 2), crew, visits: visits.map((workOrder) => ({ workOrder })) });

describe('orders as the days bring them', () => {
  it('stand by day, building and the walk of the day, long work at its first day, those without a day last in the order of their numbers', () => {
    const orders = [order('EC/10', null), order('EC/9', null), order('ER/01', '2026-08-05'), order('EC/03', '2026-08-03'), order('EC/04', '2026-08-03'), order('EA/01', '2026-08-03')];
    const days = [day('2026-08-03', ['EC/04', 'EC/03']), day('2026-08-03', ['EA/01'], 2), day('2026-08-05', ['ER/01'], 2), day('2026-08-07', ['EC/04'])];
    const plan = { workOrders: orders, calendar: { days } } as unknown as Plan;
    expect(inDayOrder(plan).map((o) => o.id)).toEqual(['EA/01', 'EC/04', 'EC/03', 'ER/01', 'EC/9', 'EC/10']);
    expect(inDayOrder({ ...plan, workOrders: [...orders].reverse() })).toEqual(inDayOrder(plan));
  });
});
