import type { Plan } from '#planning';
import { rolloutWorkbook } from '#workbook';
import { plannedWith } from './planned.js';
import { disagreements, engineOf, formulasOf, valueAt } from './recalculation.js';

/** The first window of every dwelling is replaced in the third year of the study; building QB is sold in the tenth. */
const [REPLACED, SOLD] = [2028, 2035];

describe('film taken off at the end of its life', () => {
  let plan: Plan;
  let replaced: ReadonlySet<string>;
  beforeAll(async () => {
    plan = await plannedWith((p) => {
      const first = new Map([...p.windows].reverse().map((w) => [w.dwelling, w.id]));
      replaced = new Set(first.values());
      return {
        ...p,
        settings: { ...p.settings, endRemoval_cents_m2: 700 },
        phases: p.phases.map((phase) => ({ ...phase, cap_cents: phase.cap_cents * 10 })),
        buildings: p.buildings.map((b) => (b.id === 'QB' ? { ...b, endYear: SOLD } : b)),
        windows: p.windows.map((w) => (replaced.has(w.id) ? { ...w, replacementYear: REPLACED } : w)),
      };
    });
  }, 120_000);

  it('is the glass of the windows that are still there, and nothing in a building sold before', () => {
    expect(plan.lines.length).toBeGreaterThan(1);
    let [less, none] = [0, 0];
    for (const line of plan.lines) {
      const found = plan.payback.lines.find((l) => l.dwelling === line.dwelling)!;
      const standing = line.windows.filter((w) => !replaced.has(w.window));
      const glass_m2 = line.building === 'QB' ? 0 : standing.reduce((sum, w) => sum + (w.paneCount * w.width_mm * w.height_mm) / 1e6, 0);
      expect(found.filmAtEnd_m2).toBeCloseTo(glass_m2, 9);
      expect(found.endRemoval_cents).toBeCloseTo(glass_m2 * 700, 6);
      less += glass_m2 > 0 && standing.length < line.windows.length ? 1 : 0;
      none += glass_m2 === 0 ? 1 : 0;
    }
    expect({ less: less > 0, none: none > 0 }).toEqual({ less: true, none: true });
  });

  it('stands in the book as it does in the plan, in every formula', () => {
    const book = rolloutWorkbook(plan);
    const engine = engineOf(book);
    expect(disagreements(formulasOf(book), (f) => valueAt(engine, f.sheet, f.address))).toEqual([]);
    expect(Number(engine.getNamedExpressionValue('plan_end_removal'))).toBeCloseTo(plan.payback.endRemoval_cents! / 100, 1);
    expect(plan.payback.endRemoval_cents).toBeGreaterThan(0);
  }, 60_000);
});
