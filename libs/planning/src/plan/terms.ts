import type { View } from '#calc';

/** A term of the money side as used, with where it came from. */
export interface Term {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly basis: 'measured' | 'published' | 'assumed' | 'given';
}

/** Terms of the plan as used. */
export interface PlanTerms {
  readonly view: View;
  readonly studyStart: string;
  readonly currency: string;
  readonly realDiscountRate: number;
  readonly realEscalation: number;
  readonly filmDegradation_1_yr: number;
  readonly labour_cents_h: number;
  readonly labourIsCash: boolean;
  readonly contingencyShare: number;
  readonly materialTaxShare: number;
  readonly labourTaxShare: number;
  readonly consumables_cents_m2: number;
  /** Taking film off at the end of its life, by its area; plans kept before have none. */
  readonly endRemoval_cents_m2?: number;
  readonly trimPerEdge_mm: number;
  readonly edgeGap_mm: number;
  readonly terms: readonly Term[];
}
