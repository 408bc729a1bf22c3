import { installMinutes, labour_cents, type PaneWork, type TimeModel } from './index.js';

// Round figures, so that every line can be worked in the head.
const model: TimeModel = {
  perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 10, perLite_min: 6, ladderFactor: 1.5, overFurnitureFactor: 2, woodOrPuttyFactor: 1.1,
  oldFilm_min: 8, oldFilm_min_m2: 20, seam_min: 15, firstDayFactor: 2, lowFactor: 0.5, highFactor: 3,
};
const one: PaneWork = { count: 1, area_m2: 2, reach: 'floor' };

describe('person-minutes by hand', () => {
  it.each([
    ['a pane of 2 m² from the floor', [one], 30 + 12 + 20],
    ['the same by ladder', [{ ...one, reach: 'ladder' as const }], 30 + 1.5 * 32],
    ['the same over furniture', [{ ...one, reach: 'over-furniture' as const }], 30 + 2 * 32],
    ['three of them with putty', [{ ...one, count: 3, hasWoodOrPutty: true }], 30 + 3 * 1.1 * 32],
    ['one with two seams', [{ ...one, seams: 2 }], 30 + 32 + 30],
    ['one lite', [{ ...one, isDividedLite: true }], 30 + 6 + 20],
    ['one with old film, by ladder', [{ ...one, hasOldFilm: true, reach: 'ladder' as const }], 30 + 1.5 * 32 + 1.5 * (8 + 40)],
    ['none beside one', [{ ...one, count: 0 }, one], 30 + 32],
  ])('%s', (_what, panes, minutes) => {
    expect(installMinutes({ panes }, model).best).toBeCloseTo(minutes, 9);
  });

  it('a first day doubles set-up, film and old film alike; the range is half to three times', () => {
    const { low, best, high, removal } = installMinutes({ panes: [{ ...one, hasOldFilm: true }], isFirstDay: true }, model);
    expect([removal, best, low, high]).toEqual([96, 2 * (30 + 32 + 48), 110, 660]);
    expect(installMinutes({ panes: [one], isFirstDay: false }, model)).toEqual({ removal: 0, best: 62, low: 31, high: 186 });
  });

  it('nothing to do takes no time, although a pane is listed', () => {
    expect(installMinutes({ panes: [{ ...one, count: 0, hasOldFilm: true }] }, model)).toEqual({ low: 0, best: 0, high: 0, removal: 0 });
  });

  it('refuses a count below zero, an endless pane and half a seam; an hour costs its rate, and nothing costs nothing', () => {
    for (const wrong of [{ count: -1 }, { count: Number.NaN }, { area_m2: -1 }, { area_m2: Infinity }, { area_m2: Number.NaN }, { seams: 0.5 }]) {
      expect(() => installMinutes({ panes: [{ ...one, ...wrong }] }, model)).toThrow(RangeError);
    }
    expect(labour_cents(60, 3400)).toBe(3400);
    expect([labour_cents(0, 3400), labour_cents(60, 0)]).toEqual([0, 0]);
    for (const [minutes, rate] of [[Infinity, 1], [Number.NaN, 1], [1, -1], [1, Infinity]] as const) expect(() => labour_cents(minutes, rate)).toThrow(RangeError);
  });
});
