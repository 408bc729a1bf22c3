import type { PaneWork } from '#calc';
import type { ReferenceTable } from './reference-table.js';

const perFoot_m2 = 0.09290304;
const panes = (count: number, area_ft2: number, more: Partial<PaneWork> = {}): PaneWork => ({ count, area_m2: area_ft2 * perFoot_m2, reach: 'floor', ...more });

/** Person-minutes worked by hand in square feet from the stated rule: 30 per dwelling, 12 per pane, 1.2 per square foot. */
export const installMinutesByHand: ReferenceTable<{ readonly panes: readonly PaneWork[]; readonly isFirstDay?: boolean }, { readonly best: number }> = {
  of: 'calc/labour/install-minutes',
  source: 'own time model as stated in square feet; common practice, no source',
  seen: 'computed from the stated formula',
  tolerance: { abs: 1e-9, why: 'exact conversion of square feet; only binary rounding is left' },
  rows: [
    { given: { panes: [panes(2, 15)] }, expect: { best: 30 + 2 * (12 + 18) }, place: 'two usual windows' },
    { given: { panes: [panes(2, 35)] }, expect: { best: 30 + 2 * (12 + 42) }, place: 'two large windows' },
    { given: { panes: [panes(1, 20, { reach: 'ladder' })] }, expect: { best: 30 + 1.3 * 36 }, place: 'by ladder' },
    { given: { panes: [panes(1, 20, { reach: 'over-furniture', hasWoodOrPutty: true })] }, expect: { best: 30 + 1.5 * 1.2 * 36 }, place: 'over furniture, putty' },
    { given: { panes: [panes(1, 20, { hasOldFilm: true })] }, expect: { best: 30 + 36 + 10 + 20 }, place: 'old film' },
    { given: { panes: [panes(1, 20, { seams: 1 })] }, expect: { best: 30 + 36 + 15 }, place: 'one seam' },
    { given: { panes: [panes(12, 1.5, { isDividedLite: true })] }, expect: { best: 30 + 12 * (6 + 1.8) }, place: 'twelve lites' },
    { given: { panes: [panes(2, 15)], isFirstDay: true }, expect: { best: 1.5 * 90 }, place: 'first day' },
    { given: { panes: [] }, expect: { best: 0 }, place: 'no pane, no visit' },
  ],
};
