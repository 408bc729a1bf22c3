import type { PlanSettings } from '#calc';
import type { DefaultOf } from './assumption-book.js';
import type { PlanTerms, Term } from '../plan/terms.js';

interface Asked {
  readonly key: string;
  readonly label: string;
  readonly given: number | null;
}

/** One term: what the plan file gives, or the default with its source. */
function termOf(asked: Asked, defaultOf: DefaultOf): Term {
  const fallback = defaultOf<number>(asked.key);
  if (asked.given === null) return { key: asked.key, label: asked.label, value: fallback.value, unit: fallback.unit, source: fallback.source, basis: fallback.basis };
  return { key: asked.key, label: asked.label, value: asked.given, unit: fallback.unit, source: 'plan settings', basis: 'given' };
}

/** Terms of the money side: the plan file first, the assumptions for what it leaves blank; real, at prices of the study start. */
export function planTerms(settings: PlanSettings, defaultOf: DefaultOf): PlanTerms {
  const asked: readonly Asked[] = [
    { key: 'realDiscountRate', label: 'Real discount rate', given: settings.realDiscountRate },
    { key: 'realEscalation', label: 'Real rise of energy prices', given: settings.realEscalation },
    { key: 'filmDegradation_1_yr', label: 'Effect a film loses', given: null },
    { key: 'labour_cents_h', label: 'Loaded labour rate', given: settings.labour_cents_h },
    { key: 'contingencyShare', label: 'Contingency, inside the cap', given: settings.contingencyShare },
    { key: 'materialTaxShare', label: 'Tax on material', given: settings.materialTaxShare },
    { key: 'labourTaxShare', label: 'Tax on labour', given: settings.labourTaxShare },
    { key: 'consumables_cents_m2', label: 'Consumables', given: settings.consumables_cents_m2 },
    { key: 'endRemoval_cents_m2', label: 'Taking film off at the end of its life', given: settings.endRemoval_cents_m2 ?? null },
    { key: 'trimPerEdge_mm', label: 'Trim allowance per edge', given: settings.trimPerEdge_mm },
    { key: 'edgeGap_mm', label: 'Edge gap of the finished film', given: null },
  ];
  const terms = asked.map((each) => termOf(each, defaultOf));
  const valueOf = (key: string): number => terms.find((t) => t.key === key)?.value ?? 0;
  return {
    view: settings.view,
    studyStart: settings.studyStart,
    currency: settings.currency,
    realDiscountRate: valueOf('realDiscountRate'),
    realEscalation: valueOf('realEscalation'),
    filmDegradation_1_yr: valueOf('filmDegradation_1_yr'),
    labour_cents_h: valueOf('labour_cents_h'),
    labourIsCash: settings.labourIsCash ?? defaultOf<boolean>('labourIsCash').value,
    contingencyShare: valueOf('contingencyShare'),
    materialTaxShare: valueOf('materialTaxShare'),
    labourTaxShare: valueOf('labourTaxShare'),
    consumables_cents_m2: valueOf('consumables_cents_m2'),
    endRemoval_cents_m2: valueOf('endRemoval_cents_m2'),
    trimPerEdge_mm: valueOf('trimPerEdge_mm'),
    edgeGap_mm: valueOf('edgeGap_mm'),
    terms,
  };
}
