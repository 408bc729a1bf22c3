import { isPrintable } from '#papers';
import { earnedInBillsWords, npvExpected, type NpvExpected, type Plan, spokenForWords, unspentWords } from '#planning';
import type { PlanHeading } from '#store';

export interface PhaseFigures {
  readonly phase: string;
  readonly cap_cents: number;
  readonly paid_cents: number;
  readonly left_cents: number;
  readonly dwellings: number;
  readonly panes: number;
}

/** What the start page says of a plan. */
export interface PlanFigures extends Pick<Plan['payback'], 'npv_cents' | 'npvOwner_cents' | 'simplePayback_yr' | 'firstYearCooling_cents'>, Pick<Plan['proof'], 'status' | 'gap'> {
  readonly phases: readonly PhaseFigures[];
  /** Buildings with work, by id and name. */
  readonly buildings: readonly string[];
  readonly countsAsFound: boolean;
  readonly expected: NpvExpected | null;
  /** Sentences: whether the plan earns its cost back as expected, what draws say, money unspent and spoken for. */
  readonly words: readonly string[];
  readonly errors: number;
  readonly warnings: number;
}

export interface Headline {
  readonly heading: PlanHeading;
  /** Null for a plan of an earlier version that lacks them. */
  readonly figures: PlanFigures | null;
}

function figuresOf(plan: Plan): PlanFigures {
  const { npv_cents, npvOwner_cents, simplePayback_yr, firstYearCooling_cents } = plan.payback;
  const { status, gap } = plan.proof;
  const worked = new Set(plan.lines.map(({ building }) => building));
  const count = (severity: 'error' | 'warning'): number => plan.findings.filter((finding) => finding.severity === severity).length;
  return {
    npv_cents, npvOwner_cents, simplePayback_yr, firstYearCooling_cents, status, gap,
    phases: plan.phases.map(({ phase, spending, left_cents, lines, panes }) => ({ phase: phase.id, cap_cents: phase.cap_cents, paid_cents: spending.total_cents, left_cents, dwellings: lines, panes })),
    buildings: plan.buildings.filter(({ id }) => worked.has(id)).map(({ id, name }) => `${id} ${name}`),
    countsAsFound: plan.bills?.setting === 'as-found',
    expected: npvExpected(plan),
    words: [...earnedInBillsWords(plan), ...(plan.outlook?.words ?? []), ...unspentWords(plan), ...spokenForWords(plan)],
    errors: count('error'),
    warnings: count('warning'),
  };
}

/** The figures of a plan for the start page; a plan of an earlier version may lack them. */
export const headlineOf = (heading: PlanHeading, plan: Plan): Headline => ({ heading, figures: isPrintable(plan) ? figuresOf(plan) : null });
