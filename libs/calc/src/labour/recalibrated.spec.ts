import fc from 'fast-check';
import { installMinutes, recalibrated, type TimeModel } from './index.js';

const model: TimeModel = {
  perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 13, perLite_min: 6, ladderFactor: 1.3, overFurnitureFactor: 1.5, woodOrPuttyFactor: 1.2,
  oldFilm_min: 10, oldFilm_min_m2: 11, seam_min: 15, firstDayFactor: 1.5, lowFactor: 0.65, highFactor: 1.35,
};
const visit = (ratio: number, model_min = 100) => ({ model_min, real_min: ratio * model_min });

describe('the time model after real minutes', () => {
  it('stays as it is without records', () => expect(recalibrated(model, [])).toEqual({ factor: 1, recorded: 1, visits: 0, model }));

  // Four visits at one and a half times the model weigh as much as the model: √1.5.
  // Range: spread about ln √1.5 is 0.20273 each, × 1.2816 = 0.25982; own half width ln(1.35/0.65)/2 = 0.36544;
  // √((4 × 0.36544² + 4 × 0.25982²)/8) = 0.31706; × 1/0.36544 = 0.86762; 0.65^0.86762 = 0.68815; 1.35^0.86762 = 1.29738.
  it('goes half way after four visits, and draws the range in', () => {
    const { factor, recorded, model: moved } = recalibrated(model, [visit(1.5), visit(1.5, 60), visit(1.5), visit(1.5, 240)]);
    expect(factor).toBeCloseTo(Math.sqrt(1.5), 12);
    expect(recorded).toBeCloseTo(1.5, 12);
    expect(moved.lowFactor).toBeCloseTo(0.68815, 4);
    expect(moved.highFactor).toBeCloseTo(1.29738, 4);
    expect(moved.perPane_min).toBeCloseTo(12 * Math.sqrt(1.5), 12);
  });

  it('comes to the record when there are many', () => expect(recalibrated(model, Array.from({ length: 4000 }, () => visit(0.8))).factor).toBeCloseTo(0.8, 3));

  it('widens the range where visits scatter more than it says', () => {
    const { factor, model: moved } = recalibrated(model, [visit(3), visit(1 / 3), visit(3), visit(1 / 3)]);
    expect(factor).toBeCloseTo(1, 12);
    expect(moved.highFactor).toBeGreaterThan(1.35);
  });

  it('lies between the model and the record, scales every job alike, whatever the order', () => {
    const visits = fc.array(fc.record({ model_min: fc.double({ min: 10, max: 900, noNaN: true }), real_min: fc.double({ min: 10, max: 900, noNaN: true }) }), { minLength: 1, maxLength: 20 });
    fc.assert(fc.property(visits, (actuals) => {
      const moved = recalibrated(model, actuals);
      expect(moved.factor).toBeGreaterThanOrEqual(Math.min(1, moved.recorded) - 1e-12);
      expect(moved.factor).toBeLessThanOrEqual(Math.max(1, moved.recorded) + 1e-12);
      const job = { panes: [{ count: 3, area_m2: 1.4, reach: 'ladder' as const, hasOldFilm: true, seams: 2 }, { count: 2, area_m2: 0.2, reach: 'floor' as const, isDividedLite: true }] };
      expect(installMinutes(job, moved.model).best).toBeCloseTo(installMinutes(job, model).best * moved.factor, 8);
      expect(recalibrated(model, [...actuals].reverse())).toEqual(moved);
    }));
  });

  it('keeps a range of none at none', () => {
    const sure = { ...model, lowFactor: 1, highFactor: 1 };
    expect(recalibrated(sure, [visit(2)]).model).toMatchObject({ lowFactor: 1, highFactor: 1 });
  });

  it('refuses minutes that are none', () => {
    expect(() => recalibrated(model, [{ model_min: 0, real_min: 5 }])).toThrow('model_min');
    for (const real_min of [Number.NaN, 0, -5, Infinity]) expect(() => recalibrated(model, [{ model_min: 5, real_min }])).toThrow('real_min');
    expect(() => recalibrated(model, [], 0)).toThrow('modelVisits');
  });
});
