import fc from 'fast-check';
import { checkCertificate, choiceFindings, select, type ChosenOption, type SelectionProblem } from './index.js';

/** Worth of the best choice by trying every one; null when none keeps the rules. */
function bestByTrial(problem: SelectionProblem): number | null {
  let best: number | null = null;
  const chosen: ChosenOption[] = [];
  const walk = (g: number): void => {
    const group = problem.groups[g];
    if (group === undefined) {
      const { findings, value } = choiceFindings(problem, chosen);
      if (findings.length === 0 && (best === null || value > best)) best = value;
      return;
    }
    walk(g + 1);
    for (const option of group.options) {
      for (let phase = 0; phase < problem.phases.length; phase++) {
        chosen.push({ group: group.id, option: option.id, phase });
        walk(g + 1);
        chosen.pop();
      }
    }
  };
  walk(0);
  return best;
}

const optional = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });

const option = fc.record({ cost_cents: fc.integer({ min: 0, max: 60 }), value: fc.integer({ min: -20, max: 100 }), crewMinutes: fc.integer({ min: 0, max: 20 }), family: optional(fc.constantFrom('A', 'B')), phases: optional(fc.subarray([0, 1])) });
const group = fc.record({ building: optional(fc.constantFrom('B0', 'B1')), phases: optional(fc.subarray([0, 1], { minLength: 1 })), options: fc.array(option, { minLength: 1, maxLength: 3 }) });
const building = fc.record({
  visit_cents: fc.integer({ min: 0, max: 40 }),
  visitMinutes: fc.integer({ min: 0, max: 10 }),
  owner: optional(fc.constantFrom('O0')),
  cap_cents: optional(fc.integer({ min: 20, max: 150 })),
  minSpendIfVisited_cents: optional(fc.integer({ min: 0, max: 60 })),
  oneFamily: optional(fc.boolean()),
  visitPrice: optional(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }))),
});
const phase = fc.record({ cap_cents: fc.integer({ min: 0, max: 150 }), crewMinutes: optional(fc.integer({ min: 0, max: 50 })), valueFactor: optional(fc.integer({ min: 0, max: 3 })) });

/** Leaves out fields that are undefined, as JSON would. */
const tidy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

const smallProblem: fc.Arbitrary<SelectionProblem> = fc
  .record({
    groups: fc.array(group, { minLength: 1, maxLength: 5 }),
    phases: fc.tuple(phase, phase),
    buildings: fc.tuple(building, building),
    ownerCap: fc.integer({ min: 20, max: 300 }),
    picks: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 8, maxLength: 8 }),
    rules: fc.integer({ min: 0, max: 15 }),
    price: fc.integer({ min: 0, max: 60 }),
  })
  .map(({ groups, phases, buildings, ownerCap, picks, rules, price }) => {
    const id = (k: number): string => `G${picks[k]! % groups.length}`;
    const differ = (a: string, b: string): boolean => a !== b;
    return tidy({
      groups: groups.map((each, g) => ({ ...each, id: `G${g}`, options: each.options.map((one, o) => ({ ...one, id: `o${o}` })) })),
      phases,
      buildings: buildings.map((each, b) => ({ ...each, id: `B${b}` })),
      owners: [{ id: 'O0', cap_cents: ownerCap }],
      must: (rules & 1) === 0 ? [] : [id(0)],
      mustNot: (rules & 2) === 0 ? [] : [id(1)],
      exclusive: (rules & 4) !== 0 && differ(id(2), id(3)) ? [[id(2), id(3)] as const] : [],
      keepTogether: (rules & 8) === 0 ? [] : [[id(4), id(5)], [id(6), id(7)]].filter(([a, b]) => differ(a!, b!)).map((ids) => ({ groups: ids, price })),
    });
  });

describe('select', () => {
  it('finds and proves what trying every choice finds, with every kind of limit and rule', () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const result = select(problem);
        expect({ status: result.status, value: result.value }).toEqual({ status: result.value === null ? 'infeasible' : 'optimal', value: bestByTrial(problem) });
        expect(checkCertificate(problem, result).findings).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('comes to an end where all dwellings are alike and every way loses nothing', () => {
    const options = [0, 1, 2, 3].map((o) => ({ id: `o${o}`, cost_cents: 50 + 37 * o, value: 50 + 37 * o }));
    const problem: SelectionProblem = {
      groups: Array.from({ length: 200 }, (_, g) => ({ id: String(g).padStart(3, '0'), options })),
      phases: [0, 1, 2].map((t) => ({ cap_cents: 2300 + 11 * t, valueFactor: 10 - t })),
    };
    const result = select(problem, { work_s: 0.5 });
    expect(checkCertificate(problem, result).findings).toEqual([]);
    // A cent buys a unit of value: nobody can pass the caps themselves, and whole options of 50, 87, 124 and 161 fill all but a few cents.
    const caps = 2300 * 10 + 2311 * 9 + 2322 * 8;
    expect(result.bound).toBeLessThanOrEqual(caps);
    expect(result.value).toBeGreaterThan(0.99 * caps);
  }, 60_000);
});
