import type { Building, TimeModel } from '#calc';
import { onePhase, optionWindow, planTermsOf } from '../../../../test/portfolios/film-option.js';
import { redoMoney } from './redo-cuts.js';
import { type RedoPaneOf, redoWork } from './redo-work.js';

const model: TimeModel = { perDwelling_min: 30, perPane_min: 12, perArea_min_m2: 10, perLite_min: 6, ladderFactor: 1.3, overFurnitureFactor: 1.5, woodOrPuttyFactor: 1.2, oldFilm_min: 10, oldFilm_min_m2: 10, seam_min: 15, firstDayFactor: 1.5, lowFactor: 0.5, highFactor: 2 };
// 900 × 1,200 mm: 1.08 m² a pane.
const pane = (why: RedoPaneOf['why'], n: number): RedoPaneOf => ({ pane: `B1/1/W1/${String(n)}`, window: 'B1/1/W1', dwelling: 'B1/1', building: 'B1', ownerEntity: 'O', phase: 'O/1', film: 'A', why, note: null, day: '2026-08-04', of: optionWindow({ paneCount: 3 }) });
const building = { id: 'B1', crew: 'contractor', contractor_cents_m2: 2_000 } as Building;
const terms = planTermsOf({ consumables_cents_m2: 100 });
const work = (panes: readonly RedoPaneOf[], change: Partial<Parameters<typeof redoWork>[0]> = {}) => redoWork({ panes, records: [], consents: [], phases: [onePhase(1)], timeModel: model, terms, buildings: [building], asOf: '2026-09-01', ...change })[0]!;

describe('panes to be done again where a contractor works', () => {
  it('cost nothing where they are his own faults, and keep no minutes of the own crew', () => {
    const faulty = work([pane('defect', 1)]);
    expect(faulty).toMatchObject({ work_cents: 0, crew: 'contractor', isMadeGood: true });
    expect(redoMoney([faulty], { cuts: [], left: [] }, { materialTaxShare: 0 })).toEqual([{ phase: 'O/1', film_cents: 0, work_cents: 0, minutes: 0 }]);
  });

  it('are charged by his price where they were not reached, or where faults are charged', () => {
    // 1.08 m² × (20 + 1) dollars = 22.68.
    expect(work([pane('not reached', 1)])).toMatchObject({ work_cents: 2_268, crew: 'contractor' });
    expect(work([pane('not reached', 1)]).isMadeGood).toBeUndefined();
    expect(work([pane('defect', 1), pane('not reached', 2)]).work_cents).toBe(2_268);
    expect(work([pane('defect', 1)], { contractorMakesGood: false }).work_cents).toBe(2_268);
  });

  it('are the own crew\u2019s minutes where it works, or the contractor has no price', () => {
    // 30 + 12 + 10 × 1.08 + old film 10 + 10.8 = 73.6 min at 60 dollars an hour, and 1.08 dollars of consumables.
    for (const own of [{ ...building, crew: 'own' }, { ...building, contractor_cents_m2: null }] as Building[]) {
      expect(work([pane('defect', 1)], { buildings: [own] })).toMatchObject({ work_cents: 7_468 });
      expect(work([pane('defect', 1)], { buildings: [own] }).crew).toBeUndefined();
    }
  });
});
