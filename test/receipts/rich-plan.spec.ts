import type { Portfolio } from '#calc';
import type { Receipt } from '#planning';
import { RICH } from '../workbook/changed-inputs.js';
import { byKernel } from './at-pointer.js';
import { openedPlan, type OpenedPlan } from './opened-plan.js';

const FOLDER = 'test/inventories/ok/two-buildings';

/** Prices by the hour, steps, demand and a minimum; a second year; rising prices, ageing film, taxes; gas in one building, a contractor in the other. */
const rich = (p: Portfolio): Portfolio => ({
  ...p,
  tariffs: [RICH],
  settings: { ...p.settings, realEscalation: 0.01, materialTaxShare: 0.06, labourTaxShare: 0.02, labourIsCash: false },
  phases: [...p.phases.map((phase) => ({ ...phase, cap_cents: 60_000 })), { ...p.phases[0]!, id: 'OWNER1/2027-28', name: '2027-28', firstDay: '2027-07-01', lastDay: '2028-06-30', cap_cents: 90_000 }],
  buildings: p.buildings.map((b) => (b.id === 'QA' ? { ...b, crew: 'contractor' as const, contractor_cents_m2: 2_500, contractorVisit_cents: 9_000 } : b)),
  dwellings: p.dwellings.map((d) => (d.id.startsWith('QB/') ? { ...d, heating: { ...d.heating, kind: 'gas' as const, efficiency: 0.8 } } : d)),
  rolls: p.rolls.map((r) => ({ ...r, length_mm: r.length_mm / 10, price_cents: (r.price_cents ?? 0) / 10 })),
});

const same = (receipt: Receipt): boolean => Math.abs(byKernel(receipt) - (receipt.value as number)) <= 1e-9 * Math.max(1, Math.abs(receipt.value as number));

jest.setTimeout(120_000);

describe('receipts of a plan with all that prices and payers can do', () => {
  let opened: OpenedPlan;
  let receipts: readonly Receipt[];
  beforeAll(async () => {
    opened = await openedPlan(FOLDER, rich);
    receipts = await opened.all();
  });

  it('has lines in both buildings and both years', () => {
    expect(new Set(opened.plan.lines.map((l) => l.building)).size).toBe(2);
    expect(new Set(opened.plan.lines.map((l) => l.phase)).size).toBe(2);
  });

  it('every figure is what its steps come to', () => {
    expect(receipts.filter((r) => !r.worked.agrees).map((r) => [r.figure, r.value, r.worked])).toEqual([]);
  });

  it('every kernel gives the same digits from the input it is handed', () => {
    const withKernel = receipts.filter((r) => r.compute !== null);
    expect(withKernel.length).toBeGreaterThan(40);
    expect(withKernel.filter((r) => !same(r)).map((r) => [r.figure, r.value, byKernel(r)])).toEqual([]);
  });

  it('bills under prices by the hour are worked from hours, and say so', async () => {
    const saving = await opened.open(`line/${opened.plan.lines[0]!.dwelling}/saving`);
    expect(saving.compute?.kernel).toBe('tariff-bill');
    expect(saving.computeWhy).toContain('8760 hours');
  });

  it('a figure without a kernel says why', () => {
    for (const r of receipts) if (r.compute === null) expect([r.figure, r.computeWhy]).toEqual([r.figure, expect.stringMatching(/\w{3}/)]);
  });
});

describe('a receipt of a plan whose survey has changed since', () => {
  it('says that its steps do not come to the figure, and why', async () => {
    const opened = await openedPlan(FOLDER, (p) => p, (p) => ({ ...p, dwellings: p.dwellings.map((d) => ({ ...d, coolingSetPoint_degC: 27 })) }));
    const { dwelling } = opened.plan.lines[0]!;
    const electricity = await opened.open(`cooling/${dwelling}/electricity`);
    expect(electricity.value).toBe(opened.plan.lines[0]!.option.asFoundCooling_kWh);
    expect(electricity.worked.agrees).toBe(false);
    expect(electricity.worked.why).toContain('changed');
  });
});
