import { openCatalogue } from '#catalogue';
import type { Plan, PlanLine } from '../plan/plan.js';
import type { ReceiptAt } from './figure.js';
import { lineRealisation } from './realisation.js';

const catalogue = openCatalogue();
const MEASURED = { factor: 0.6, standardError: 0.2 };
const line = (middle: number): PlanLine => ({ dwelling: 'B/1', building: 'B', realisation: { low: 0.1, middle, high: 1, basis: 'model, not calibrated' } }) as unknown as PlanLine;
const plan = { dwellings: [{ id: 'B/1', planType: null }], bills: { calibration: { groups: [] }, verification: { realisation: MEASURED } } } as unknown as Plan;
const middleOf = async (stated: number) => (await lineRealisation(line(stated)).find((f) => f.id === 'line/B/1/realisation/middle')!.receipt({ plan, catalogue } as ReceiptAt));

/** Median under Bayes' rule, by plain steps through the factor itself: ln f ~ normal by the studies before, measured ~ normal(f, error). */
function medianByHand(): number {
  const studies = ['study.bronzeOffice', 'study.lowEFilmOffices', 'study.stormWindowHomes', 'study.absorbingTestRooms', 'study.reflectiveTestRooms'] as const;
  const logs = studies.map((s) => Math.log((catalogue.assumptions.value(s).value) / (catalogue.assumptions.value('study.modelledShare').value)));
  const m = logs.reduce((a, b) => a + b, 0) / logs.length;
  const s = Math.sqrt(logs.reduce((a, b) => a + (b - m) ** 2, 0) / (logs.length - 1));
  const steps = Array.from({ length: 8000 }, (_, i) => (i + 0.5) / 2000);
  const weights = steps.map((f) => Math.exp(-(((Math.log(f) - m) / s) ** 2) / 2 - ((MEASURED.factor - f) / MEASURED.standardError) ** 2 / 2) / f);
  const half = weights.reduce((a, b) => a + b, 0) / 2;
  let below = 0;
  return steps[weights.findIndex((w) => (below += w) >= half)]!;
}

describe('the receipt of a share learned from bills after the work', () => {
  it('works the share out by Bayes’ rule and says when the plan has another', async () => {
    const { worked } = await middleOf(0.5);
    expect(worked.agrees).toBe(false);
    expect(worked.value as number).toBeCloseTo(medianByHand(), 2);
    expect((await middleOf(worked.value as number)).worked.agrees).toBe(true);
  });
});
