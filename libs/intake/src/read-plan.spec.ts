import { fileOfText } from './files/inventory-file.js';
import { FindingList } from './finding.js';
import { readPlanText, settingsOf } from './read-plan.js';

async function read(fields: object) {
  const findings = new FindingList();
  const text = await readPlanText(fileOfText('plan.json', JSON.stringify({ name: 'P', study_start: '2026-07-01', ...fields })), findings);
  return { settings: text === null ? null : settingsOf(text), findings: findings.all() };
}

describe('the price of taking film off at its end, in plan.json', () => {
  it('is money by the square metre, kept as cents', async () => {
    expect((await read({ end_removal_per_m2: 12.5 })).settings).toMatchObject({ endRemoval_cents_m2: 1_250 });
  });

  it('may be by the square foot: 0.09290304 m² each, so 1.20 is 12.9167 a square metre', async () => {
    expect((await read({ end_removal_per_ft2: 1.2 })).settings!.endRemoval_cents_m2).toBeCloseTo(120 / 0.09290304, 6);
  });

  it('is not known where it is left out', async () => {
    expect((await read({})).settings!.endRemoval_cents_m2).toBeNull();
  });

  it.each([
    ['by both areas', { end_removal_per_m2: 12, end_removal_per_ft2: 1.2 }, 'end_removal_per_ft2'],
    ['below zero', { end_removal_per_m2: -1 }, 'end_removal_per_m2'],
  ])('%s is a finding that names the field', async (_, fields, column) => {
    const { settings, findings } = await read(fields);
    expect(settings).toBeNull();
    expect(findings).toEqual([expect.objectContaining({ file: 'plan.json', column, severity: 'error', code: 'json-field' })]);
  });
});
