import { checkProblem } from './check-problem.js';
import type { SelectionProblem } from './index.js';

const option = { id: 'grey', cost_cents: 100, value: 10 };
const problem: SelectionProblem = {
  groups: [{ id: 'A1', building: 'A', options: [option] }, { id: 'A2', building: 'A', options: [option] }],
  phases: [{ cap_cents: 1000 }, { cap_cents: 0 }],
  buildings: [{ id: 'A', visit_cents: 0, visitMinutes: 0, owner: 'O' }],
  owners: [{ id: 'O', cap_cents: 0 }],
};
const years = (count: number) => Array.from({ length: count }, () => ({ cap_cents: 1 }));
const withOption = (more: object): Partial<SelectionProblem> => ({ groups: [{ id: 'A1', options: [{ ...option, ...more }] }] });
const withBuilding = (more: object): Partial<SelectionProblem> => ({ buildings: [{ id: 'A', visit_cents: 0, visitMinutes: 0, ...more }] });

it.each<[string, Partial<SelectionProblem>]>([
  ['limits of nothing', {}],
  ['24 years without visits', { phases: years(24) }],
  ['10 years with visits', { phases: years(10), ...withBuilding({ visit_cents: 1 }) }],
  ['minutes and factors of 0', { phases: [{ cap_cents: 0, crewMinutes: 0, valueFactor: 0 }] }],
  ['a value below zero', withOption({ value: -5 })],
  ['a film for nothing', withOption({ cost_cents: 0, crewMinutes: 0 })],
  ['a year for the last phase', withOption({ phases: [0, 1] })],
  ['a visit price for each year', withBuilding({ visitPrice: [0, 3] })],
  ['a building nobody lists', { groups: [{ id: 'A1', building: 'X', options: [] }], buildings: undefined }],
  ['rules on groups that are there', { must: ['A1'], mustNot: ['A2'], exclusive: [['A1', 'A2']], keepTogether: [{ groups: ['A1', 'A2'], price: 0 }] }],
  ['some time', { timeLimit_s: 0.1 }],
])('%s are taken', (_, more) => {
  expect(() => checkProblem({ ...problem, ...more })).not.toThrow();
});

it.each<[string, Partial<SelectionProblem>, string]>([
  ['no year', { phases: [] }, 'phases must be 1…24, got 0'],
  ['25 years', { phases: years(25) }, 'phases must be 1…24, got 25'],
  ['half a cent', { phases: [{ cap_cents: 0.5 }] }, 'cap_cents of phase 0'],
  ['a cap below zero', { phases: [{ cap_cents: -1 }] }, 'cap_cents of phase 0 must be a whole number ≥ 0, got -1'],
  ['minutes below zero', { phases: [{ cap_cents: 1, crewMinutes: -1 }] }, 'crewMinutes of phase 0'],
  ['a broken factor', { phases: [{ cap_cents: 1 }, { cap_cents: 1, valueFactor: 1.5 }] }, 'valueFactor of phase 1'],
  ['two owners of one name', { owners: [{ id: 'O', cap_cents: 0 }, { id: 'O', cap_cents: 0 }] }, 'owner ids must differ, got O twice'],
  ['an owner’s cap below zero', { owners: [{ id: 'O', cap_cents: -1 }] }, 'cap_cents of owner O'],
  ['two houses of one name', { buildings: [...problem.buildings!, ...problem.buildings!] }, 'building ids must differ, got A twice'],
  ['two dwellings of one name', { groups: [...problem.groups, problem.groups[1]!] }, 'group ids must differ, got A2 twice'],
  ['two films of one name', { groups: [{ id: 'A1', options: [option, option] }] }, 'option ids of a group must differ, got A1 grey twice'],
  ['a visit below zero', withBuilding({ visit_cents: -1 }), 'visit_cents of building A'],
  ['visiting minutes of a half', withBuilding({ visitMinutes: 0.5 }), 'visitMinutes of building A'],
  ['a price too few', withBuilding({ visitPrice: [1] }), 'visitPrice of building A must have a price for each of the 2 phases, got 1'],
  ['a price below zero', withBuilding({ visitPrice: [1, -1] }), 'visitPrice of building A must be'],
  ['a house’s cap below zero', withBuilding({ cap_cents: -1 }), 'cap_cents of building A'],
  ['a least spend below zero', withBuilding({ minSpendIfVisited_cents: -1 }), 'minSpendIfVisited_cents of building A'],
  ['an owner who is not listed', withBuilding({ owner: 'Q' }), 'owner of building A must be listed, got Q'],
  ['a house that is not listed', { groups: [{ id: 'A1', building: 'X', options: [] }] }, 'building of group A1 must be listed, got X'],
  ['11 years with visits', { phases: years(11), ...withBuilding({ visit_cents: 1 }) }, 'phases must be 1…10'],
  ['11 years with minutes of visits', { phases: years(11), ...withBuilding({ visitMinutes: 1 }) }, 'phases must be 1…10'],
  ['11 years with a least spend', { phases: years(11), ...withBuilding({ minSpendIfVisited_cents: 1 }) }, 'phases must be 1…10'],
  ['11 years with a price of visits', { phases: years(11), ...withBuilding({ visitPrice: years(11).map((_, t) => (t === 4 ? 1 : 0)) }) }, 'phases must be 1…10'],
  ['a cost of half a cent', withOption({ cost_cents: 0.5 }), 'cost_cents of A1 grey'],
  ['a cost below zero', withOption({ cost_cents: -1 }), 'cost_cents of A1 grey'],
  ['a broken value', withOption({ value: 0.5 }), 'value of A1 grey must be a whole number, got 0.5'],
  ['a film’s minutes below zero', withOption({ crewMinutes: -1 }), 'crewMinutes of A1 grey'],
  ['a film in a year too late', withOption({ phases: [2] }), 'option A1 grey phases must be 0…1, got 2'],
  ['a film in half a year', withOption({ phases: [0.5] }), 'option A1 grey phases'],
  ['a dwelling in a year before the first', { groups: [{ id: 'A1', phases: [-1], options: [] }] }, 'group A1 phases must be 0…1, got -1'],
  ['a must that is not there', { must: ['Z'] }, 'group of must must be listed, got Z'],
  ['a must-not that is not there', { mustNot: ['Z'] }, 'group of mustNot'],
  ['one side of an exclusion that is not there', { exclusive: [['Z', 'A1']] }, 'group of exclusive must be listed, got Z'],
  ['the other side of it', { exclusive: [['A1', 'Z']] }, 'group of exclusive must be listed, got Z'],
  ['an exclusion of itself', { exclusive: [['A1', 'A1']] }, 'exclusive must name two groups, got A1 twice'],
  ['a set with a stranger', { keepTogether: [{ groups: ['A1', 'Z'], price: 1 }] }, 'group of keepTogether'],
  ['a set of one', { keepTogether: [{ groups: ['A1'], price: 1 }] }, 'keepTogether must name at least two'],
  ['a set with one twice', { keepTogether: [{ groups: ['A1', 'A2', 'A1'], price: 1 }] }, 'keepTogether must name at least two'],
  ['a set for half a cent', { keepTogether: [{ groups: ['A1', 'A2'], price: 0.5 }] }, 'price of keepTogether'],
  ['no time', { timeLimit_s: 0 }, 'timeLimit_s must be > 0'],
])('%s is refused by name', (_, more, name) => {
  expect(() => checkProblem({ ...problem, ...more })).toThrow(RangeError);
  expect(() => checkProblem({ ...problem, ...more })).toThrow(name);
});
