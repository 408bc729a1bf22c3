import type { Plan } from '../plan/plan.js';
import type { ReceiptAt } from './figure.js';
import { priceFigures } from './limit-price.js';

// Shown with the later phase first; the question of the choice numbers A before B.
const plan = {
  phases: [{ phase: { id: 'B' } }, { phase: { id: 'A' } }],
  explanations: { prices: [{ phase: 'A', nextDollar: 0.5, nextCrewHour_cents: 120 }, { phase: 'B', nextDollar: 0.2, nextCrewHour_cents: null }] },
  terms: { contingencyShare: 0.1, terms: [] },
  proof: { status: 'optimal', record: { problem: {}, result: { value: 1, certificate: { multipliers: { cap: [0.55, 0.22], crewMinutes: [2, 0] } } } } },
} as unknown as Plan;

describe('the price of a limit', () => {
  it('is read at the place the question gives the phase, whatever order phases are shown in', async () => {
    const receipts = await Promise.all(priceFigures(plan).map(async (f) => f.receipt({ plan } as ReceiptAt)));
    expect(receipts.map((r) => [r.figure, r.worked.agrees])).toEqual([['limit/A/next-dollar', true], ['limit/A/next-crew-hour', true], ['limit/B/next-dollar', true]]);
    expect(receipts.map((r) => r.compute?.result[0]?.pointer)).toEqual(['/certificate/multipliers/cap/0', '/certificate/multipliers/crewMinutes/0', '/certificate/multipliers/cap/1']);
  });
});
