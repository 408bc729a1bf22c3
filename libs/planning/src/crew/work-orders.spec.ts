import type { Building, Film, MoveOut } from '#calc';
import { filmOption, onePhase, optionWindow, planTermsOf } from '../../../../test/portfolios/film-option.js';
import type { OptionWindow } from '../options/option.js';
import { inEnglish, planSentences, told } from '../words/told.js';
import type { ShadeTime } from './work-order-types.js';
import { openOrders, orderOnDay, type WorkOrderRequest } from './work-orders.js';

const building = { id: 'B1', builtYear: 1990 } as Building;
const inventoryRow = { file: 'moveouts.csv', row: 2 };
const shade: ShadeTime = { side: 'south', azimuth_deg: 180, day: '2026-08-01', from: '16:00', until: null, why: 'wall' };
const request = (change: Partial<WorkOrderRequest> & { readonly windows?: readonly OptionWindow[] } = {}): WorkOrderRequest => ({
  buildings: new Map([['B1', building]]),
  films: new Map([['A', { id: 'A', name: 'neutral' } as Film]]),
  moveOuts: [],
  madeOn: '2026-06-01',
  notice_h: () => 24,
  terms: planTermsOf(),
  windowsOf: () => change.windows ?? [optionWindow({ paneCount: 2 })],
  shadeOn: (_b, azimuth_deg, day) => (azimuth_deg === 180 ? [{ ...shade, day }] : []),
  kit: { slip_L_m2: 1, panesPerBlade: 3 },
  ...change,
});
const open = (of: WorkOrderRequest, facades = [180]) => {
  const line = { option: filmOption({ facades, paneCount: 2 }), phase: 0, value: { phase: 'O/1', whole_cents: 0, owner_cents: 0 } };
  return openOrders([{ phase: onePhase(1), lines: [line], visits: ['B1'], cuts: [], made: [], spending: null as never, over_cents: 0 }], of)[0]!;
};

describe('a work order', () => {
  // 900 × 1,200 mm with half an inch on each edge: 925.4 × 1,225.4 mm = 36.43 × 48.24 in, up to the eighth: 36 1/2 × 48 1/4.
  it('labels each piece with dwelling, room, pane, size, which end is up, film and roll', () => {
    expect(open(request()).order.panes[1]!.label).toEqual({ dwelling: 'B1/1', room: 'living room', pane: 'B1/1/W1/2', size: '36 1/2 × 48 1/4', up: 'label end is the top of the pane', film: 'A', roll: 'not laid: see the cut list' });
  });

  it('names day, panes and hours of notice in the text of the notice', () => {
    const of = request();
    expect(orderOnDay(open(of), { day: '2026-08-01', isEmpty: false }, of).noticeText).toMatch(/dwelling B1\/1\. On 2026-08-01 .* 2 window panes; .*at least 24 h/);
    expect(orderOnDay(open(of), null, of).noticeText).toContain('a day still to be set');
  });

  it('gives the shade of its sides on its day, and says which side has sun all day', () => {
    const of = request();
    const order = orderOnDay(open(of, [90, 180]), { day: '2026-08-01', isEmpty: false }, of);
    expect(order.shade).toEqual([shade]);
    expect(order.cautions).toContain('The east side has sun from sunrise to sunset that day: film it early or hang a sheet outside.');
  });

  it('warns of lead paint before 1978 or of unknown year, and not after', () => {
    const cautions = (builtYear: number | null) => open(request({ buildings: new Map([['B1', { ...building, builtYear }]]) })).order.cautions.join(' ');
    expect(cautions(1977)).toContain('lead paint');
    expect(cautions(null)).toContain('lead paint');
    expect(cautions(1978)).not.toContain('lead paint');
  });

  it('takes the old film off before cleaning, and packs a scraper, where there is old film', () => {
    const { order } = open(request({ windows: [optionWindow({ existingFilm: true })] }));
    expect(order.steps.indexOf(planSentences['step.oldFilm'])).toBe(order.steps.indexOf(planSentences['step.clean']) - 1);
    expect(order.kit.map((k) => k.what)).toContain(planSentences['kit.scraper']);
    expect(open(request()).order.kit.map((k) => k.what)).not.toContain(planSentences['kit.scraper']);
  });

  // Four panes of 0.9 × 1.2 m are 4.32 m²: 5 whole litres; one blade edge for three panes: 2.
  it('counts the kit: pieces, solution, blades', () => {
    const { kit } = open(request({ windows: [optionWindow({ paneCount: 4 })] })).order;
    expect(kit.slice(0, 3).map((k) => [k.quantity, k.unit])).toEqual([[4, 'pieces'], [5, 'litres'], [2, 'pieces']]);
  });

  it('is done while the dwelling stands empty, where that is known', () => {
    const moveOut: MoveOut = { dwelling: 'B1/1', out: '2026-09-30', in: '2026-10-10', inventoryRow };
    expect(open(request({ moveOuts: [moveOut] }))).toMatchObject({ empty: { from: '2026-09-30', until: '2026-10-10' }, order: { earliest: '2026-09-30' } });
    expect(open(request({ moveOuts: [{ ...moveOut, out: '2025-01-01', in: '2025-02-01' }] })).empty).toBeNull();
  });

  it('says how one gets in on the day itself', () => {
    const of = request({ moveOuts: [{ dwelling: 'B1/1', out: '2026-09-30', in: '2026-10-10', inventoryRow }] });
    const order = (day: string, isEmpty: boolean) => orderOnDay(open(of), { day, isEmpty }, of);
    expect(order('2026-10-01', true)).toMatchObject({ isEmpty: true, earliest: '2026-09-30', access: 'empty that day (from 2026-09-30 until 2026-10-10)' });
    expect(order('2026-07-01', false)).toMatchObject({ isEmpty: false, earliest: '2026-07-01' });
    expect(order('2026-07-01', false).access).toMatch(/^occupied that day: written notice 24 h.*no working day was free/);
    expect(orderOnDay(open(of), null, of).access).toBe('empty from 2026-09-30 until 2026-10-10: do it then');
  });

  it('knows no empty time that is over when the plan is made', () => {
    const of = request({ madeOn: '2026-11-25', moveOuts: [{ dwelling: 'B1/1', out: '2026-07-31', in: '2026-08-10', inventoryRow }] });
    expect(open(of).empty).toBeNull();
    expect(orderOnDay(open(of), { day: '2026-11-30', isEmpty: false }, of).access).toBe(inEnglish(told('access.occupied', { hours: 24 })));
  });

  it('names nothing of the computer on paper', () => {
    const words = JSON.stringify(open(request()).order);
    expect(words).not.toMatch(/`|rollout /);
  });
});
