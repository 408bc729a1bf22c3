import { choiceTerms, lock, sideOption, twoPhases } from '../../../../test/portfolios/choice.js';
import { chooseUnderCaps } from './choose-under-caps.js';
import { selectionProblem } from './selection-problem.js';
import { workersHere } from '../workers-here.js';

const options = ['B1/1', 'B1/2', 'B1/3'].map((id) => sideOption(id, [180]));
const worth = { 'B1/1|180|A': 5_000, 'B1/2|180|A': 4_000, 'B1/3|180|A': 3_000 };

describe('the question put to the selection', () => {
  it('takes a visit off the value, brought to the study start like a cost', () => {
    const terms = choiceTerms(worth, { phases: twoPhases([100_000, 100_000]), visit: () => ({ cents: 10_300, minutes: 45 }) });
    const { problem } = selectionProblem({ ...terms, options, workedCaps_cents: [100_000, 100_000], timeLimit_s: 1 });
    // 3 % real: 103 dollars a year on are 100 today.
    expect(problem.buildings).toEqual([{ id: 'B1', visit_cents: 10_300, visitMinutes: 45, visitPrice: [10_300, 10_000], oneFamily: false }]);
  });

  it('makes a visit when its lines are worth it to the cent, and not below', async () => {
    const chosen = async (cents: number) => (await chooseUnderCaps(options, [100_000], { ...choiceTerms(worth, { visit: () => ({ cents, minutes: 0 }) }), work: workersHere })).choice;
    expect((await chosen(11_999)).lines).toHaveLength(3);
    expect((await chosen(11_999)).proof).toMatchObject({ status: 'optimal', value_cents: 1 });
    expect((await chosen(12_001)).lines).toHaveLength(0);
  });

  it('does not depend on the order of the options', () => {
    const terms = { ...choiceTerms(worth), workedCaps_cents: [20_000], timeLimit_s: 1 };
    expect(selectionProblem({ ...terms, options: [...options].reverse() }).problem).toEqual(selectionProblem({ ...terms, options }).problem);
  });

  it('leaves a dwelling locked out away and holds one locked in, worth it or not', async () => {
    const locks = [lock({ subject: 'B1/1', direction: 'out' }), lock({ subject: 'B1/3' })];
    const { choice } = await chooseUnderCaps(options, [10_000], { ...choiceTerms({ ...worth, 'B1/3|180|A': -50 }, { locks }), work: workersHere });
    expect(choice.lines.map((l) => l.option.dwelling)).toEqual(['B1/3']);
  });

  it('keeps the crew minutes of a phase, visits included', async () => {
    const phases = [{ ...twoPhases([100_000, 0])[0]!, crewMinutes: 104 }];
    const { choice } = await chooseUnderCaps(options, [100_000], { ...choiceTerms(worth, { phases, visit: () => ({ cents: 0, minutes: 45 }) }), work: workersHere });
    // 45 minutes of visit leave 59: one dwelling of 30 minutes.
    expect(choice.lines.map((l) => l.option.dwelling)).toEqual(['B1/1']);
  });

  it('leaves out a limit of minutes that even all dwellings and the visit keep: 3 × 30 + 45 = 135', () => {
    const limit = (crewMinutes: number) => {
      const phases = [{ ...twoPhases([100_000, 0])[0]!, crewMinutes }];
      return selectionProblem({ ...choiceTerms(worth, { phases, visit: () => ({ cents: 0, minutes: 45 }) }), options, workedCaps_cents: [100_000] }).problem.phases[0]!.crewMinutes;
    };
    expect([limit(134), limit(135)]).toEqual([134, undefined]);
  });
});

describe('phases that can bind nothing', () => {
  it('keep a line where the building is visited anyway, if another visit would cost more than the line gains', async () => {
    // In the roomy second year both are worth 10 cents more, which does not pay the visit of its own.
    const phases = twoPhases([20_000, 100_000]);
    const valueIn: ReturnType<typeof choiceTerms>['valueIn'] = (o, p) => {
      const cents = (worth as Record<string, number>)[o.id]! + (p.id === 'O/2' ? (o.dwelling === 'B1/3' ? 2_000 : 10) : 0);
      return { phase: p.id, whole_cents: cents, owner_cents: cents };
    };
    const terms = choiceTerms(worth, { phases, valueIn, visit: () => ({ cents: 1_000, minutes: 0 }) });
    const { choice } = await chooseUnderCaps(options, [20_000, 100_000], { ...terms, work: workersHere });
    // All in the second year: 12,000 + 2,020 − 971 = 13,049; anything in the first year pays a second visit.
    expect(choice.proof).toMatchObject({ status: 'optimal', value_cents: 13_049 });
    expect(new Set(choice.lines.map((l) => l.phase))).toEqual(new Set([1]));
  });
});
