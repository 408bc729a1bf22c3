import type { Receipt } from '#planning';
import { byKernel } from './at-pointer.js';
import { openedPlan, type OpenedPlan } from './opened-plan.js';

// Expected figures stand in test/worked-example/steps.md and are worked there by hand.

describe('receipts of the cottage worked by hand', () => {
  let cottage: OpenedPlan;
  const open = (figure: string): Promise<Receipt> => cottage.open(figure);
  const step = (receipt: Receipt, label: string): number => receipt.steps.find((s) => s.label === label)!.value;

  beforeAll(async () => {
    cottage = await openedPlan('test/worked-example/inventory');
  });

  it('steps 3 to 5: installed cost by its parts, minute by minute', async () => {
    const cost = await open('line/WX/1/cost');
    expect(cost.value).toBeCloseTo(17_781.53, 2);
    expect(step(cost, 'minutes at WX/1/W01')).toBeCloseTo(29.633333, 5);
    expect(step(cost, 'minutes at WX/1/W03')).toBeCloseTo(37.180508, 5);
    expect(step(cost, 'old film off WX/1/W02')).toBeCloseTo(24.694444, 5);
    expect(step(cost, 'labour')).toBeCloseTo(7586.83, 2);
    expect(step(cost, 'consumables')).toBeCloseTo(629.37, 2);
    expect(step(cost, 'tax on material')).toBeCloseTo(414.91, 2);
    expect(cost.rows.map((r) => [r.file, r.row])).toEqual(expect.arrayContaining([['windows.csv', 2], ['windows.csv', 3], ['windows.csv', 4], ['rolls.csv', 2]]));
  });

  it('step 1: cut sizes in whole ticks', async () => {
    const size = await open('window/WX/1/W03/cut-size');
    expect(size.value).toBe('35 1/8 × 59 3/8');
    // 34 1/8 in = 34.125 × 8128 ticks; with an inch of trim 35 1/8 in is 281 eighths.
    expect(size.steps[0]!.substituted).toContain('277368 ticks');
    expect(size.steps[0]!.value).toBe(281 / 8);
  });

  it('step 6: the spending of the phase to the cent', async () => {
    const spending = await open('phase/OWNER1%2F2026-27/spending');
    expect(spending.value).toBe(94_018);
    expect(['film', 'labour', 'consumables', 'old film off', 'visits', 'freight', 'tax', 'contingency'].map((label) => step(spending, label))).toEqual([60_000, 7587, 629, 1482, 9600, 4500, 3256, 6964]);
    expect((await open('phase/OWNER1/2026-27/left')).value).toBe(25_982);
  });

  it('opens every figure of its list once, and the steps come to the figure', async () => {
    const receipts = await cottage.all();
    expect(new Set(receipts.map((r) => r.figure)).size).toBe(receipts.length);
    expect(receipts.filter((r) => !r.worked.agrees).map((r) => [r.figure, r.value, r.worked])).toEqual([]);
  });

  it('gives every kernel an input that comes to the same digits, or says why there is none', async () => {
    const receipts = await cottage.all();
    const withKernel = receipts.filter((r) => r.compute !== null);
    expect(new Set(withKernel.map((r) => r.compute!.kernel))).toEqual(new Set(['life-cycle', 'tariff-bill', 'cut', 'select', 'dwelling-year', 'cooling-plant', 'glazing', 'facade-year', 'realisation', 'spread']));
    for (const receipt of withKernel) expect([receipt.figure, Math.abs(byKernel(receipt) - (receipt.value as number)) <= 1e-9 * Math.max(1, Math.abs(receipt.value as number))]).toEqual([receipt.figure, true]);
    for (const receipt of receipts) if (receipt.compute === null) expect(receipt.computeWhy).toMatch(/\w/);
  });

  it('names the nearest figures for one it does not know', async () => {
    const found = await cottage.ask('line/WX/1/costs');
    expect(found).toMatchObject({ asked: 'line/WX/1/costs' });
    expect('nearest' in found && found.nearest[0]).toBe('line/WX/1/cost');
  });
});
