import type { Dwelling, Window } from '#calc';
import { window as windowRecord } from '../../../../test/portfolios/two-dwellings.js';
import { placedAzimuth_deg, placedWindows, windowIndex } from './placed-windows.js';

const window = (change: Partial<Window>): Window => ({ ...windowRecord('PT/W1', { dwelling: null, planType: 'PT' }), ...change });
const own = (change: Partial<Window>): Window => window({ id: `B1/1/${change.mark ?? 'W1'}`, dwelling: 'B1/1', planType: null, ...change });
const dwelling = (change: Partial<Dwelling> = {}): Dwelling => ({ id: 'B1/1', building: 'B1', planType: 'PT', frontAzimuth_deg: 180, mirrored: null, ...change }) as Dwelling;
const sides = (windows: readonly Window[], of = dwelling()): (string | number)[][] => placedWindows(of, windowIndex(windows)).windows.map((w) => [w.mark, w.azimuth_deg]);

const plan = [window({ mark: 'W1', azimuth_deg: 0 }), window({ id: 'PT/W2', mark: 'W2', azimuth_deg: 90 })];

describe('the windows of a plan type in a dwelling', () => {
  it('turn with the front', () => expect(sides(plan)).toEqual([['W1', 180], ['W2', 270]]));
  it('change left for right when mirrored, front and back stay', () => expect(sides(plan, dwelling({ mirrored: true }))).toEqual([['W1', 180], ['W2', 90]]));
  it('give way to the dwelling\'s own row of the same mark', () => expect(sides([...plan, own({ mark: 'W2', azimuth_deg: 45 })])).toEqual([['W1', 180], ['W2', 45]]));
  it('go where the dwelling\'s own row drops the mark', () => expect(sides([...plan, own({ mark: 'W2', dropped: true })])).toEqual([['W1', 180]]));
  it('are joined by rows of a mark of their own', () => expect(sides([...plan, own({ mark: 'W9', azimuth_deg: 10 })])).toHaveLength(3));
  it('say where they come from, and take the id of the dwelling', () => {
    expect(placedWindows(dwelling(), windowIndex(plan)).windows[0]).toMatchObject({ id: 'B1/1/W1', dwelling: 'B1/1', fromPlanType: 'PT' });
  });
  it('are not placed without a front, and say so', () => {
    const { windows, unplaced } = placedWindows(dwelling({ frontAzimuth_deg: null }), windowIndex(plan));
    expect(windows).toEqual([]);
    expect(unplaced.map((u) => u.window)).toEqual(['B1/1/W1', 'B1/1/W2']);
  });
});

describe('a bearing laid out', () => {
  it('stays within a turn', () => {
    expect(placedAzimuth_deg(270, 180, false)).toBe(90);
    expect(placedAzimuth_deg(270, 180, true)).toBe(270);
  });
});
