import { installMinutes, labour_cents } from '#calc';
import { openCatalogue } from '#catalogue';
import { labour } from './checks/dwelling-and-plant.js';
import { hold } from './checks/hold.js';
import { installMinutesByHand } from './labour.js';

labour.forEach(hold);

describe('person-minutes', () => {
  const model = openCatalogue().timeModel;

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
