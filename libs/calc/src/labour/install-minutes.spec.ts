import fc from 'fast-check';
import { installMinutes, labour_cents, type PaneWork, type TimeModel } from './index.js';

const model: TimeModel = {
  perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 13, perLite_min: 6, ladderFactor: 1.3, overFurnitureFactor: 1.5, woodOrPuttyFactor: 1.2,
  oldFilm_min: 10, oldFilm_min_m2: 11, seam_min: 15, firstDayFactor: 1.5, lowFactor: 0.7, highFactor: 1.3,
};
const pane: fc.Arbitrary<PaneWork> = fc.record({
  count: fc.integer({ min: 1, max: 12 }),
  area_m2: fc.double({ min: 0.05, max: 6, noNaN: true }),
  reach: fc.constantFrom('floor' as const, 'ladder' as const, 'over-furniture' as const),
  isDividedLite: fc.boolean(),
  hasWoodOrPutty: fc.boolean(),
  hasOldFilm: fc.boolean(),
  seams: fc.integer({ min: 0, max: 1 }),
});

describe('person-minutes', () => {
  it('low ≤ best ≤ high, and removal is a part of the best', () => {
    fc.assert(fc.property(fc.array(pane, { maxLength: 6 }), (panes) => {
      const { low, best, high, removal } = installMinutes({ panes }, model);
      expect(low).toBeLessThanOrEqual(best);
      expect(best).toBeLessThanOrEqual(high);
      expect(removal).toBeLessThanOrEqual(best);
    }));
  });

  it('one more pane never takes less time', () => {
    fc.assert(fc.property(fc.array(pane, { minLength: 1, maxLength: 6 }), pane, (panes, more) => {
      expect(installMinutes({ panes: [...panes, more] }, model).best).toBeGreaterThan(installMinutes({ panes }, model).best);
    }));
  });

  it('two visits cost one set-up more than one', () => {
    fc.assert(fc.property(pane, pane, (a, b) => {
      const apart = installMinutes({ panes: [a] }, model).best + installMinutes({ panes: [b] }, model).best;
      expect(apart - installMinutes({ panes: [a, b] }, model).best).toBeCloseTo(30, 9);
    }));
  });

  it('the order of windows changes nothing but the last digits', () => {
    fc.assert(fc.property(fc.array(pane, { maxLength: 6 }), (panes) => {
      expect(installMinutes({ panes: [...panes].reverse() }, model).best).toBeCloseTo(installMinutes({ panes }, model).best, 9);
    }));
  });

  it('refuses what cannot be worked', () => {
    expect(() => installMinutes({ panes: [{ count: 1, area_m2: 0, reach: 'floor' }] }, model)).toThrow('area_m2');
    expect(() => installMinutes({ panes: [{ count: 1.5, area_m2: 1, reach: 'floor' }] }, model)).toThrow('count');
    expect(() => installMinutes({ panes: [{ count: 1, area_m2: 1, reach: 'floor', seams: -1 }] }, model)).toThrow('seams');
    expect(() => labour_cents(-1, 3400)).toThrow('minutes');
    expect(() => labour_cents(60, Number.NaN)).toThrow('rate_cents_h');
  });
});
