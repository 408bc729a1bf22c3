import type { InventoryRow, LedgerEntry, Portfolio, Rebate } from '#calc';
import { type Receipt, receiptFigures } from '#planning';
import { RICH } from '../workbook/changed-inputs.js';
import { byKernel } from './at-pointer.js';
import { openedPlan, type OpenedPlan } from './opened-plan.js';

const FOLDER = 'test/inventories/ok/two-buildings';

const row = (file: string, at: number): InventoryRow => ({ file, row: at });
/** Two offers: one that a cap cuts, one whose letter is there. Both count glass on any side. */
const OFFER: Rebate = { id: 'R1', building: null, rate_cents_m2: 1_200, cap_cents: null, costShare: 0.3, sectors: null, solarHeatGainBeforeAtLeast: null, solarHeatGainAfterAtMost: null, areaAtLeast_m2: null, needsPreApproval: false, preApprovedOn: null, deadline: null, inventoryRow: row('rebates.csv', 2) };
const CAPPED: Rebate = { ...OFFER, id: 'R2', building: 'QB', rate_cents_m2: 3_000, cap_cents: 4_000, costShare: null, needsPreApproval: true, preApprovedOn: '2026-07-01', inventoryRow: row('rebates.csv', 3) };

/** An order that was invoiced above its amount and paid in part, a quote, and film in the store. */
const NOTED: Omit<LedgerEntry, 'id' | 'kind' | 'amount_cents' | 'inventoryRow'> = { ownerEntity: 'OWNER1', phase: 'OWNER1/2026-27', day: '2026-05-04', expires: null, freight_cents: null, minimumOrder_cents: null, film: null, settles: null, note: null };
const LEDGER: readonly LedgerEntry[] = [
  { ...NOTED, id: 'Q1', kind: 'quote', amount_cents: 50_000, inventoryRow: row('ledger.csv', 2) },
  { ...NOTED, id: 'PO1', kind: 'committed', amount_cents: 3_000, inventoryRow: row('ledger.csv', 3) },
  { ...NOTED, id: 'I1', kind: 'invoiced', amount_cents: 3_200, settles: 'PO1', inventoryRow: row('ledger.csv', 4) },
  { ...NOTED, id: 'P1', kind: 'paid', amount_cents: 2_000, settles: 'I1', inventoryRow: row('ledger.csv', 5) },
  { ...NOTED, id: 'S1', kind: 'stock', amount_cents: 900, inventoryRow: row('ledger.csv', 6) },
];

/** Prices by the hour, steps, demand and a minimum; a second year; rising prices, ageing film, taxes; gas in one building, a contractor in the other. */
const rich = (p: Portfolio): Portfolio => ({
  ...p,
  rebates: [OFFER, CAPPED],
  ledger: LEDGER,
  tariffs: [RICH],
  settings: { ...p.settings, realEscalation: 0.01, materialTaxShare: 0.06, labourTaxShare: 0.02, labourIsCash: false, endRemoval_cents_m2: 1_500 },
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

  it('opens chances, offers, the ledger, what a kWh and the next dollar are worth, and the calendar', () => {
    const kinds = new Set(receipts.map((r) => r.figure.replace(/%2F/g, '/').split('/')[0]));
    for (const kind of ['plan', 'line', 'phase', 'ledger', 'rebate', 'limit', 'curve', 'calendar', 'film', 'rolls', 'glass', 'cooling', 'meter', 'sun', 'window', 'rank']) expect(kinds).toContain(kind);
    const kernels = new Set(receipts.flatMap((r) => r.compute?.kernel ?? []));
    for (const kernel of ['spread', 'realisation', 'rebate', 'select', 'cooling-plant', 'dwelling-year']) expect(kernels).toContain(kernel);
  });

  it('an order invoiced above its amount counts by its invoice, and what is paid is taken off', async () => {
    const of = async (column: string): Promise<unknown> => (await opened.open(`ledger/OWNER1/2026-27/${column}`)).value;
    expect(await of('ordered')).toBe(3_200);
    expect(await of('open')).toBe(1_200);
    expect(await of('remaining')).toBe(60_000 - 2_000 - 1_200);
    expect(await of('stock')).toBe(900);
    expect((await opened.open('ledger/OWNER1/2026-27/open')).rows.map((r) => r.row)).toEqual([4, 5, 3]);
  });

  it('what a fund gives is the least of its limits on the lines that count on it', async () => {
    expect(opened.plan.payback.rebates.length).toBeGreaterThan(0);
    for (const given of opened.plan.payback.rebates) {
      const receipt = await opened.open(`rebate/${given.rebate}/${given.building}/${given.phase}`);
      expect(receipt.rows[0]?.file).toBe('rebates.csv');
      if (given.rebate === 'R2') expect(receipt.value).toBeLessThanOrEqual(4_000);
    }
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

/** A cap too small for all, and a letter of the association of QB that nobody has asked for. */
const short = (p: Portfolio): Portfolio => ({
  ...p,
  consents: [...p.consents, { id: 'L1', building: 'QB', kind: 'association', glazing: null, film: null, window: null, state: 'needed', date: null, reference: null, inventoryRow: row('consents.csv', 2) }],
  phases: p.phases.map((phase) => ({ ...phase, cap_cents: 25_000 })),
  rolls: p.rolls.map((r) => ({ ...r, length_mm: r.length_mm / 10, price_cents: (r.price_cents ?? 0) / 10 })),
});

describe('receipts of what a cap and a letter keep out', () => {
  let opened: OpenedPlan;
  const openedOf = async (start: string): Promise<Receipt[]> => Promise.all(receiptFigures(opened.plan).filter((f) => f.id.startsWith(start)).map((f) => opened.open(f.id)));
  beforeAll(async () => {
    opened = await openedPlan(FOLDER, short);
  });

  it('the reserve opens to its value by the same digits, and to the price of what it would use', async () => {
    const reserve = await openedOf('reserve/');
    expect(reserve.length).toBeGreaterThan(0);
    for (const r of reserve) expect([r.figure, r.worked]).toEqual([r.figure, { value: r.value, agrees: true, why: null }]);
    for (const r of reserve) if (r.compute !== null) expect([r.figure, byKernel(r)]).toEqual([r.figure, r.value]);
    expect(reserve.some((r) => r.compute?.kernel === 'life-cycle')).toBe(true);
  });

  it('a letter opens to the dwellings behind it', async () => {
    const letters = await openedOf('waiting/');
    expect(letters.length).toBeGreaterThan(0);
    for (const r of letters) expect([r.figure, r.worked.agrees]).toEqual([r.figure, true]);
    expect(letters[0]?.steps.filter((s) => s.label.startsWith('QB/')).length).toBe(2);
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
