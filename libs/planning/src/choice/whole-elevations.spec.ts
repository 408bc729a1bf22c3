import { choiceTerms, lock, sideOption } from '../../../../test/portfolios/choice.js';
import { chooseUnderCaps } from './choose-under-caps.js';
import { explainPlan } from './explain-plan.js';
import { workersHere } from '../workers-here.js';

// Two dwellings look east and west, one east only. East pays for all but the last; west pays for the first alone.
const options = [
  ...['B1/1', 'B1/2'].flatMap((id) => [sideOption(id, [90]), sideOption(id, [270]), sideOption(id, [90, 270], { cost: { ...sideOption(id, [90]).cost, total_cents: 20_000 } })]),
  sideOption('B1/3', [90]),
];
const worth = {
  'B1/1|90|A': 5_000, 'B1/1|270|A': 1_000, 'B1/1|90+270|A': 6_000,
  'B1/2|90|A': 4_000, 'B1/2|270|A': -3_000, 'B1/2|90+270|A': 1_000,
  'B1/3|90|A': -500,
};
const choose = (cap_cents: number, of: Parameters<typeof choiceTerms>[1] = {}) => chooseUnderCaps(options, [cap_cents], { ...choiceTerms(worth, { building: { wholeElevations: true }, ...of }), work: workersHere });
const lines = async (...ask: Parameters<typeof choose>) => (await choose(...ask)).choice.lines.map((l) => l.option.id);

describe('whole elevations', () => {
  it('are filmed with every dwelling behind them, also one that would not pay by itself', async () => {
    expect(await lines(100_000)).toEqual(['B1/1|90|A', 'B1/2|90|A', 'B1/3|90|A']);
  });

  it('are left as a whole when the cap does not hold them as a whole', async () => expect(await lines(29_999)).toEqual([]));

  it('are not asked of other buildings', async () => expect(await lines(100_000, { building: { wholeElevations: false } })).toEqual(['B1/1|90+270|A', 'B1/2|90|A']));

  it('are whole without a dwelling locked out', async () => {
    expect(await lines(100_000, { locks: [lock({ subject: 'B1/3', direction: 'out' })] })).toEqual(['B1/1|90|A', 'B1/2|90|A']);
  });

  it('come in with a dwelling locked in', async () => {
    expect(await lines(100_000, { locks: [lock({ subject: 'B1/2', azimuth_deg: 270 })] })).toEqual(['B1/1|90+270|A', 'B1/2|90+270|A', 'B1/3|90|A']);
  });

  it('wait as a whole for a letter of one dwelling', async () => {
    const waiting = options.map((o) => (o.dwelling === 'B1/3' ? { ...o, waitsFor: ['B1: board'] } : o));
    const { choice } = await chooseUnderCaps(waiting, [100_000], { ...choiceTerms(worth, { building: { wholeElevations: true } }), work: workersHere });
    expect(choice.lines).toEqual([]);
  });

  it('have their price said: what single dwellings would bring more', async () => {
    const settings = { ...choiceTerms(worth, { building: { wholeElevations: true } }) };
    const chosen = await choose(100_000);
    const explained = await explainPlan({ chosen, lines: chosen.choice.lines, options, settings: settings as never, work: workersHere });
    // 6,000 + 4,000 without the rule, 5,000 + 4,000 − 500 with it.
    expect(explained.wholeElevations?.price_cents).toBe(1_500);
  });
});
