import type { Building, Film } from '#calc';
import { onePhase, optionWindow, planTermsOf } from '../../../../test/portfolios/film-option.js';
import type { RedoWork, SettledWork } from '../record/settled-work.js';
import { planSentences } from '../words/told.js';
import { calendarOf } from './calendar.js';
import { redoOrders } from './redo-orders.js';
import type { WorkOrderRequest } from './work-orders.js';

const building = { id: 'B1', builtYear: 1990, turnover_1_yr: null } as Building;
const request: WorkOrderRequest = {
  buildings: new Map([['B1', building]]), films: new Map([['A', { id: 'A', name: 'neutral' } as Film]]), moveOuts: [], madeOn: '2026-09-01', notice_h: () => 24,
  terms: planTermsOf(), windowsOf: () => [], shadeOn: () => [], kit: { slip_L_m2: 1, panesPerBlade: 3 },
};
const pane = { pane: 'B1/1/W1/2', window: 'B1/1/W1', dwelling: 'B1/1', phase: 'O/1', film: 'A', why: 'defect', note: 'CREASE', day: '2026-08-04' } as const;
const work = (change: Partial<RedoWork> = {}): RedoWork => ({
  dwelling: 'B1/1', building: 'B1', ownerEntity: 'O', phase: 'O/1', panes: [pane], windows: [optionWindow({ paneCount: 3 })], waitsForGlass: false, from: '2026-09-01', minutes: { low: 30, best: 60, high: 90 }, work_cents: 0, ...change,
});
const orders = (change: Partial<RedoWork> = {}) => redoOrders([onePhase(1)], { ...request, settled: { redoWork: [work(change)], redoCuts: [] } as unknown as SettledWork });

describe('panes to be done again', () => {
  it('have a work order of their own with those panes and why, and the old film off first', () => {
    const [{ order }] = orders() as [ReturnType<typeof orders>[0]];
    expect(order).toMatchObject({ id: '1 B1/1 again', again: true, phase: 'O/1', earliest: '2026-09-01' });
    expect(order.panes.map((p) => [p.pane, p.notes[0]])).toEqual([['B1/1/W1/2', 'do again, seen 2026-08-04: CREASE']]);
    expect(order.steps).toContain(planSentences['step.oldFilm']);
    expect(order.kit[0]).toMatchObject({ quantity: 1 });
  });

  it('that wait for glass have an order and no day', () => {
    const waiting = orders({ phase: null, waitsForGlass: true, panes: [{ ...pane, why: 'broken pane', note: 'stone' }] });
    const { calendar, findings } = calendarOf([...waiting, ...orders()], {
      phases: [onePhase(0)], hours: { crews: 1, size: 2, days_wk: 3, hours_day: 4 }, noWork: [], mobilisation_min: () => 60, noAccess: { share: 0.1, source: 'test' }, madeOn: '2026-09-01', shadeOn: () => [],
    });
    expect(waiting[0]!.order.steps[0]).toBe(planSentences['redo.needsGlass']);
    expect(calendar.days.flatMap((d) => d.visits.map((v) => v.workOrder))).toEqual(['1 B1/1 again']);
    expect(calendar.notPlaced).toMatchObject([{ workOrder: '1 B1/1 waits for glass', why: planSentences['redo.needsGlass'] }]);
    expect(findings).toEqual([]); // the records say it already
  });
});
