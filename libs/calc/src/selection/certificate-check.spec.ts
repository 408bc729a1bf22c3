import { checkCertificate, type SelectionProblem, type SelectionResult } from './index.js';

type Found = Extract<SelectionResult, { value: number }>;

/** Two dwellings for 10 cents each, worth 20 and 12. At 1.25 a cent of a cap of 15 no choice is worth more than 15 × 1.25 + (20 − 12.5) + 0 = 26.25. */
const problem: SelectionProblem = { groups: [20, 12].map((value, g) => ({ id: `G${g + 1}`, options: [{ id: 'a', cost_cents: 10, value }] })), phases: [{ cap_cents: 15 }] };
const certificate = { multipliers: { cap: [1.25], crewMinutes: [0], owners: {}, buildingCap: {}, minSpend: {}, exclusive: [] }, bound: 26, found: 20, gap: 6 / 26, provedBy: 'search' } as const;
const searched: Found = {
  status: 'optimal', chosen: [{ group: 'G1', option: 'a', phase: 0 }], value: 20, cost_cents: [10], crewMinutes: [0], bound: 20, gap: 0, certificate, effort: { independentParts: 1, searchStates: 3, endedBy: 'proof' },
};
const open: Found = { ...searched, status: 'bounded', bound: 26, gap: 6 / 26, certificate: { ...certificate, provedBy: 'none' } };
/** Under a cap of 20 both fit, and at no price the bound is 32 itself. */
const roomy = { ...problem, phases: [{ cap_cents: 20 }] };
const priced: Found = {
  ...searched, chosen: [...searched.chosen, { group: 'G2', option: 'a', phase: 0 }], value: 32, cost_cents: [20], bound: 32,
  certificate: { ...certificate, multipliers: { ...certificate.multipliers, cap: [0] }, bound: 32, found: 32, gap: 0, provedBy: 'bound' },
};
const check = (result: SelectionResult, of = problem) => checkCertificate(of, result);

describe('a true result passes, and what its proof rests on is said', () => {
  it('the search, where the prices alone prove less', () => {
    expect(check(searched)).toEqual({ valid: true, findings: [], bound: 26.25, value: 20, rests: 'search' });
  });
  it('the prices alone', () => {
    expect(check(priced, roomy)).toEqual({ valid: true, findings: [], bound: 32, value: 32, rests: 'multipliers' });
  });
  it('nothing beyond the gap', () => {
    expect(check(open)).toEqual({ valid: true, findings: [], bound: 26.25, value: 20, rests: 'gap' });
  });
  it('a plan between value and price bound, left open, rests on the search', () => {
    expect(check({ ...open, bound: 24, gap: 4 / 24 })).toMatchObject({ valid: true, rests: 'search' });
  });
  it('no choice carries no proof', () => {
    const none = { chosen: [], value: null, cost_cents: null, crewMinutes: null, bound: null, gap: null, certificate: null, why: 'nothing fits', effort: searched.effort } as const;
    expect(check({ status: 'infeasible', ...none } as unknown as SelectionResult)).toEqual({ valid: true, findings: [], bound: null, value: null, rests: 'search' });
    expect(check({ status: 'bounded', ...none } as unknown as SelectionResult).rests).toBe('nothing');
  });
  it('an empty choice worth nothing has no gap', () => {
    const nothing = { ...problem, groups: [] };
    const empty: Found = { ...priced, chosen: [], value: 0, cost_cents: [0], bound: 0, certificate: { ...priced.certificate, bound: 0, found: 0 } };
    expect(check(empty, nothing)).toMatchObject({ valid: true, rests: 'multipliers' });
  });
});

describe('each false figure is found by itself', () => {
  const certified = (more: Partial<Found['certificate']>, of: Found = searched): Found => ({ ...of, certificate: { ...of.certificate, ...more } });
  it.each<[string, Found, string]>([
    ['cost', { ...searched, cost_cents: [9] }, 'cost by phase is 10, result says 9'],
    ['cost of a year too many', { ...searched, cost_cents: [10, 0] }, 'cost by phase is 10, result says 10, 0'],
    ['price bound too low', certified({ bound: 25, gap: 5 / 25 }), 'the multipliers give a bound of 26.25, certificate says 25'],
    ['price bound too high', certified({ bound: 27, gap: 7 / 27 }), 'the multipliers give a bound of 26.25, certificate says 27'],
    ['what the certificate found', certified({ found: 19 }), 'certificate found 19, result says 20'],
    ['bound above the price bound', { ...open, bound: 27, gap: 7 / 27 }, 'bound 27 must lie between value 20 and the certificate\'s 26'],
    ['bound below the value', { ...open, bound: 19, gap: -1 / 19 }, 'bound 19 must lie between value 20'],
    ['gap', { ...open, gap: 6 / 26 + 1e-6 }, 'gap is'],
    ['gap of the certificate', certified({ gap: 0.2 }), 'gap of the certificate is'],
    ['status left open though proved', { ...searched, status: 'bounded', certificate: { ...certificate, provedBy: 'none' } }, 'status bounded does not go with bound 20 and value 20'],
    ['status proved though open', { ...open, status: 'optimal', certificate }, 'status optimal does not go with bound 26 and value 20'],
    ['word for the proof', certified({ provedBy: 'bound' }), 'proved by search, certificate says bound'],
    ['word for no proof', certified({ provedBy: 'search' }, open), 'proved by none, certificate says search'],
    ['price below zero', certified({ multipliers: { ...certificate.multipliers, minSpend: { X: [-1] } } }), 'multipliers must be ≥ 0'],
  ])('%s', (_, result, finding) => {
    const { valid, findings } = check(result);
    expect(valid).toBe(false);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toContain(finding);
  });

  it('value, with all that hangs on it', () => {
    expect(check({ ...searched, value: 21, bound: 21, certificate: { ...certificate, found: 21, gap: 5 / 26 } }).findings).toEqual(['value is 20, result says 21']);
  });
  it('a word for prices alone that is not theirs', () => {
    expect(check({ ...priced, certificate: { ...priced.certificate, provedBy: 'search' } }, roomy).findings).toEqual(['proved by bound, certificate says search']);
  });
  it('a cost in the second of two years', () => {
    const years = { ...problem, phases: [{ cap_cents: 10 }, { cap_cents: 10 }] };
    const multipliers = { ...certificate.multipliers, cap: [0, 0], crewMinutes: [0, 0] };
    const both: Found = { ...priced, chosen: priced.chosen.map((line, phase) => ({ ...line, phase })), cost_cents: [10, 10], crewMinutes: [0, 0], certificate: { ...priced.certificate, multipliers } };
    expect(check(both, years).findings).toEqual([]);
    expect(check({ ...both, cost_cents: [10, 9] }, years).findings).toEqual(['cost by phase is 10, 10, result says 10, 9']);
  });
  it('a broken rule of the choice', () => {
    expect(check({ ...priced, certificate: priced.certificate }, { ...problem, phases: [{ cap_cents: 20 }], mustNot: ['G2'] }).findings).toContain('G2 must not be taken and is');
  });
});
