import { installMinutes, labour_cents } from '#calc';
import { openCatalogue } from '#catalogue';
import { installMinutesByHand } from './labour.js';

describe('person-minutes against the rule worked by hand', () => {
  const model = openCatalogue().timeModel;

  it.each(installMinutesByHand.rows)('$place', ({ given, expect: byHand }) => {
    expect(installMinutes(given, model).best).toBeCloseTo(byHand.best, 9);
  });

  it('the range takes in the two anchors seen: about one hour for two usual windows, two to three hours for two large ones', () => {
    const [usual, large] = installMinutesByHand.rows.map((row) => installMinutes(row.given, model));
    expect(usual!.low).toBeLessThanOrEqual(60);
    expect(usual!.high).toBeGreaterThanOrEqual(60);
    expect(large!.best).toBeGreaterThanOrEqual(120);
    expect(large!.high).toBeGreaterThanOrEqual(180);
  });

  it('90 minutes at 34 dollars an hour cost 51 dollars', () => {
    expect(labour_cents(90, 3400)).toBe(5100);
  });
});
