import { choiceTerms, sideOption, twoPhases } from '../../../../test/portfolios/choice.js';
import { chooseUnderCaps } from './choose-under-caps.js';
import { checkProof } from './check-proof.js';
import { explainPlan } from './explain-plan.js';
import { workersHere } from '../workers-here.js';

// Four dwellings at 100 dollars each, worth 50, 40, 30 and −2; one waits for a letter.
const options = [...['B1/1', 'B1/2', 'B1/3', 'B1/4'].map((id) => sideOption(id, [180])), sideOption('B1/5', [180], { waitsFor: ['B1: board'] })];
const worth = { 'B1/1|180|A': 5_000, 'B1/2|180|A': 4_000, 'B1/3|180|A': 3_000, 'B1/4|180|A': -200, 'B1/5|180|A': 900 };

async function explained(cap_cents: number, of: Parameters<typeof choiceTerms>[1] = {}) {
  const settings = choiceTerms(worth, of);
  const chosen = await chooseUnderCaps(options, settings.phases.map(() => cap_cents), { ...settings, work: workersHere });
  const plan = await explainPlan({ chosen, lines: chosen.choice.lines, options, settings: settings as never, work: workersHere });
  const reason = (dwelling: string) => plan.dwellings.find((d) => d.dwelling === dwelling)!;
  return { ...plan, chosen, reason };
}

describe('why a plan is as it is', () => {
  it('prices the next dollar by what it brings: 100 dollars more bring the third dwelling', async () => {
    // At a cap that ends between the second and the third the next cent is worth 3,000 / 10,000.
    expect((await explained(25_000)).prices).toEqual([{ phase: 'O/1', nextDollar: expect.closeTo(0.3, 9) as number, nextCrewHour_cents: null }]);
  });

  it('says of a dwelling left out at which cost, film price, saving and cap it enters', async () => {
    const { reason } = await explained(15_000);
    const { toEnter } = reason('B1/3');
    // The next cent brings 4,000 / 10,000 = 0.4; the third is 3,000 − 4,000 = −1,000 behind. A cent less cost is worth 1 + 0.4: 714.3 less.
    expect(toEnter?.cost_cents).toBe(9_285);
    expect(toEnter?.filmShare).toBeCloseTo(1 - 1_000 / 1.4 / 6_000, 9);
    // Saved 13,000 today; 14,000 needed.
    expect(toEnter?.savingShare).toBeCloseTo(14 / 13, 9);
    expect(toEnter?.cap).toEqual({ of: 'O/1', cap_cents: 30_000, exact: true });
  });

  it('says of one that does not pay what would make it pay, and of one that waits for which letter', async () => {
    const { reason } = await explained(15_000);
    expect(reason('B1/4')).toMatchObject({ phase: null, why: 'does not pay for all payers together: film A on S, the best of it, is $2 short over the life of the film', toEnter: { cost_cents: 9_800, withLetters: null } });
    expect(reason('B1/5')).toMatchObject({ phase: null, toEnter: { cost_cents: null, withLetters: { letters: ['B1: board'], value_cents: 900 } } });
    expect(reason('B1/5').why).toMatch(/^waits for B1: board; with it film A on S would be worth \$9, for all payers together/);
  });

  it('says that a letter is not enough where the dwelling would not pay with it, and what is needed beside', async () => {
    const poor = [...options, sideOption('B1/6', [180], { waitsFor: ['B1: board', 'B1: glass maker'] })];
    const settings = choiceTerms({ ...worth, 'B1/6|180|A': -700 }, {});
    const chosen = await chooseUnderCaps(poor, [15_000], { ...settings, work: workersHere });
    const plan = await explainPlan({ chosen, lines: chosen.choice.lines, options: poor, settings: settings as never, work: workersHere });
    const reason = plan.dwellings.find((d) => d.dwelling === 'B1/6');
    expect(reason?.why).toContain('even with them film A on S would be $7 short');
    // Short of paying by 700 at a cost of 10,000 and short by 4,000 / 10,000 of every cent as well, the price of the cap:
    // 4,700 behind; a cent less cost is worth 1.4: 3,357.1 less.
    expect(reason?.toEnter?.withLetters).toMatchObject({ letters: ['B1: board', 'B1: glass maker'], value_cents: -700, short_cents: 4_700, cost_cents: 6_642 });
  });

  it('lists the reserve in the order lines come in', async () => {
    const { reserve } = await explained(10_000);
    expect(reserve.map((r) => [r.place, r.dwelling, r.newVisit])).toEqual([[1, 'B1/2', false], [2, 'B1/3', false]]);
  });

  it('draws the exact curve of one cap, contingency inside', async () => {
    const settings = choiceTerms(worth, {});
    const { curves } = await explained(15_000, { terms: { ...settings.terms, contingencyShare: 0.1 } });
    expect(curves).toMatchObject([{ of: 'O/1', basis: 'exact breakpoints', points: [{ cap_cents: 0, value_cents: 0 }, { cap_cents: 11_000, value_cents: 5_000, changes: ['B1/1'] }, { cap_cents: 22_000, value_cents: 9_000 }, { cap_cents: 33_000, value_cents: 12_000, changes: ['B1/3'] }] }]);
  });

  it('solves again where two caps share the dwellings, and no point lies above its bound', async () => {
    const { curves } = await explained(10_000, { phases: twoPhases([10_000, 10_000]) });
    expect(curves[0]).toMatchObject({ of: 'O', basis: 'solved again at other caps' });
    const points = curves[0]!.points;
    expect(points.every((p) => p.value_cents <= p.bound_cents)).toBe(true);
    expect(points.find((p) => p.cap_cents === 20_000)?.value_cents).toBe(9_000);
    expect(points.find((p) => p.cap_cents === 40_000)?.value_cents).toBe(12_000);
  });
});

describe('the proof kept with a plan', () => {
  const planOf = async () => {
    const { chosen } = await explained(25_000);
    const lines = chosen.choice.lines.map((l) => ({ dwelling: l.option.dwelling, phase: 'O/1', option: l.option }));
    return { proof: chosen.choice.proof, lines: lines as never };
  };

  it('holds when it is checked again', async () => expect(checkProof(await planOf())).toMatchObject({ valid: true, findings: [] }));

  it('does not hold with another value printed, another bound recorded, or a line from elsewhere', async () => {
    const plan = await planOf();
    const { record } = plan.proof;
    if (record?.result.value === undefined || record.result.value === null) throw new Error('a choice is expected');
    const tampered = { ...record, result: { ...record.result, certificate: { ...record.result.certificate, bound: record.result.certificate.bound - 500 } } };
    expect(checkProof({ ...plan, proof: { ...plan.proof, value_cents: 9_001 } })).toMatchObject({ valid: false });
    expect(checkProof({ ...plan, proof: { ...plan.proof, record: tampered } }).findings[0]).toMatchObject({ severity: 'error' });
    const foreign = { dwelling: 'B1/9', phase: 'O/1', option: sideOption('B1/9', [180]) };
    expect(checkProof({ ...plan, lines: [foreign] as never })).toMatchObject({ valid: false });
  });
});
