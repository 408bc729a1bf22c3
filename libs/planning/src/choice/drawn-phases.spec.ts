import type { Phase } from '#calc';
import { filmOption } from '../../../../test/portfolios/film-option.js';
import type { ChosenUnderCaps } from './choose-under-caps.js';
import { type DrawAt, drawnPhases } from './drawn-phases.js';

const phases = ['2027', '2028'].map((name): Phase => ({ id: `O/${name}`, ownerEntity: 'O', name, firstDay: `${name}-01-01`, lastDay: `${name}-12-31`, cap_cents: 1, crewMinutes: null }));
const options = Array.from({ length: 8 }, (_, i) => filmOption({ id: `B1/${String(i)}|180|A`, dwelling: `B1/${String(i)}` }));
const value = { phase: '', whole_cents: 1, owner_cents: 1 };
const chosen = { choice: { lines: options.map((option, i) => ({ option, phase: i < 4 ? 0 : 1, value })), proof: {} }, spare: [], findings: [] } as unknown as ChosenUnderCaps;
const at = (seed: number | null, over: Partial<DrawAt> = {}): DrawAt => ({ seed, options, phases, lockedIn: new Set(), valueIn: (_, phase) => ({ ...value, phase: phase.id }), ...over });
const first = (of: ChosenUnderCaps): string[] => of.choice.lines.filter((l) => l.phase === 0).map((l) => l.option.dwelling);

describe('who goes first among lines that cannot be told apart', () => {
  it('is left alone without a seed', () => expect(drawnPhases(chosen, at(null))).toBe(chosen));

  it('is drawn by the seed, as many in each phase as before, and said', () => {
    const drawn = drawnPhases(chosen, at(7));
    expect(first(drawn)).toHaveLength(4);
    expect(first(drawnPhases(chosen, at(7)))).toEqual(first(drawn));
    expect(new Set([1, 2, 3, 4, 5].map((seed) => first(drawnPhases(chosen, at(seed))).join())).size).toBeGreaterThan(1);
    expect(drawn.findings.at(-1)!.text).toContain('seed 7 drew');
    expect(drawn.choice.lines.every((l) => l.value.phase === phases[l.phase]!.id)).toBe(true);
  });

  it('never moves a dwelling that is locked in', () => {
    const lockedIn = new Set(['B1/0']);
    for (let seed = 0; seed < 20; seed++) expect(first(drawnPhases(chosen, at(seed, { lockedIn })))).toContain('B1/0');
  });
});
