import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Dwelling, Window } from '#calc';
import { readInventory, type Intake } from './read-inventory.js';

/** Windows of a dwelling once its plan type is laid in. */
function openings(dwelling: Dwelling, windows: readonly Window[]): readonly Window[] {
  const own = windows.filter((window) => window.dwelling === dwelling.id);
  const marks = new Set(own.map(({ mark }) => mark));
  const ofPlan = dwelling.planType === null ? [] : windows.filter((window) => window.planType === dwelling.planType && window.dwelling === null && !marks.has(window.mark));
  return [...own.filter(({ dropped }) => !dropped), ...ofPlan];
}

describe('the Example Portfolio', () => {
  let intake: Intake;
  beforeAll(async () => {
    intake = await readInventory('data/demo');
  });

  it('is read without an error, and without a warning but for the bills that are spoilt on purpose', () => {
    const told = intake.findings.filter(({ severity }) => severity !== 'note');
    expect(told.filter(({ file, severity }) => file !== 'bills.csv' || severity === 'error')).toEqual([]);
    expect(told.map(({ value, code }) => `${value?.split(':')[0]} ${code}`).sort()).toEqual([
      'EH-03 bill-overlap', 'EH-03 bill-overlap', 'ER-02 bill-amount', 'ER-05 bill-estimated', 'ER-05 bill-settles-estimate', 'ER-07 bill-period',
      'ER-09 bills-gap', 'ER-10 bill-negative', 'ER-12 bill-unit',
    ]);
    expect(intake.extras).toEqual([]);
  });

  it('has the buildings, dwellings and openings of its description', () => {
    const { buildings, dwellings, windows, planTypes, moveOuts } = intake.records;
    const perBuilding = Object.fromEntries(buildings.map(({ id }) => {
      const here = dwellings.filter(({ building }) => building === id);
      return [id, { dwellings: here.filter(({ kind }) => kind === 'dwelling').length, openings: here.reduce((sum, dwelling) => sum + openings(dwelling, windows).length, 0) }];
    }));
    expect(perBuilding).toEqual({
      EC: { dwellings: 24, openings: 144 }, EH: { dwellings: 10, openings: 140 }, EL: { dwellings: 16, openings: 112 },
      ER: { dwellings: 12, openings: 108 }, ET: { dwellings: 36, openings: 180 }, EX: { dwellings: 20, openings: 120 },
    });
    expect(dwellings.reduce((sum, dwelling) => sum + openings(dwelling, windows).length, 0)).toBe(804);
    expect(planTypes).toHaveLength(10);
    expect(moveOuts).toHaveLength(17);
  });

  it('caps come to 18,000, 18,000 and 12,000 over both owners', () => {
    const caps = new Map<string, number>();
    for (const { firstDay, cap_cents } of intake.records.phases) caps.set(firstDay, (caps.get(firstDay) ?? 0) + cap_cents);
    expect(caps).toEqual(new Map([['2026-07-01', 1_800_000], ['2027-07-01', 1_800_000], ['2028-07-01', 1_200_000]]));
  });

  it('is what its script writes', () => {
    const folder = mkdtempSync(join(tmpdir(), 'demo-'));
    execFileSync(process.execPath, ['scripts/make-demo.mjs', folder]);
    for (const name of readdirSync(folder)) expect(readFileSync(join(folder, name), 'utf8')).toBe(readFileSync(join('data/demo', name), 'utf8'));
    rmSync(folder, { recursive: true });
  });
});
