import { choiceTerms, sideOption } from '../../../../test/portfolios/choice.js';
import { onePhase } from '../../../../test/portfolios/film-option.js';
import type { PricedChoice } from '../rolls/price-by-rolls.js';
import { nextCaps } from './choose-under-caps.js';

// One line of 100 dollars by the piece, 60 of it film that lies on the shelf from the year before: 40 are really paid under a cap of 200.
function priced(of: { readonly nextCent: number; readonly fromShelf: boolean }): PricedChoice {
  const line = { option: sideOption('B1/1', [180]), phase: 0, value: { phase: 'O/1', whole_cents: 5_000, owner_cents: 5_000 } };
  const cuts = [{ fromStock: of.fromShelf ? [{ roll: 'A-48 #1', width_mm: 1219.2, length_mm: 1_000 }] : [] }];
  const phase = { phase: onePhase(20_000), lines: [line], visits: [], cuts, spending: { total_cents: 4_000 }, over_cents: 0 };
  const record = { result: { certificate: { multipliers: { cap: [of.nextCent] } } } };
  return { choice: { lines: [line], proof: { record } }, phases: [phase], stockAfter: [] } as unknown as PricedChoice;
}
const next = (of: Parameters<typeof priced>[0]) => nextCaps([20_000], priced(of), { ...choiceTerms({}), phases: [onePhase(20_000)], round: 1 });

describe('film on the shelf', () => {
  it('raises the cap the choice works with by what it saved: 160 are left beside the 100 thought', () => {
    expect(next({ nextCent: 0.3, fromShelf: true })).toMatchObject({ caps_cents: [26_000], log: [{ kind: 'rolls', subject: 'O/1' }] });
  });

  it('raises nothing where more money would bring nothing, or where nothing came from the shelf', () => {
    expect(next({ nextCent: 0, fromShelf: true })).toEqual({ caps_cents: [20_000], log: [] });
    expect(next({ nextCent: 0.3, fromShelf: false })).toEqual({ caps_cents: [20_000], log: [] });
  });
});
