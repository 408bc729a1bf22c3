import type { Phase, Portfolio, View } from '#calc';

/** What may be asked of one plan without changing the portfolio. */
export interface PlanAsk {
  readonly name?: string;
  readonly view?: View;
  /** By phase id; a cap for a phase that does not exist is refused. */
  readonly caps?: readonly { readonly phase: string; readonly cap_cents: number }[];
  /** One cap for each owner entity's first year, in place of all phases. */
  readonly oneCap_cents?: number;
}

/** Name of the one year of a portfolio that states no fiscal years and of which no cap was asked. */
export const NO_CAP = 'no cap given';

/** One year from the study start for each owner entity. */
function oneYear({ settings, ownerEntities }: Portfolio, name: string, cap_cents: number): Phase[] {
  const first = settings.studyStart;
  const end = new Date(Date.UTC(Number(first.slice(0, 4)) + 1, Number(first.slice(5, 7)) - 1, Number(first.slice(8, 10)) - 1)).toISOString().slice(0, 10);
  return ownerEntities.map((owner): Phase => ({ id: `${owner.id}/${name}`, ownerEntity: owner.id, name, firstDay: first, lastDay: end, cap_cents, crewMinutes: null }));
}

/** The fiscal years: those of the portfolio; one with the one cap asked; or, where there are none, one without money, so that all is ranked and nothing bought. */
function phasesOf(portfolio: Portfolio, ask: PlanAsk): readonly Phase[] {
  if (ask.oneCap_cents !== undefined) return oneYear(portfolio, 'one cap', ask.oneCap_cents);
  return portfolio.phases.length > 0 ? portfolio.phases : oneYear(portfolio, NO_CAP, 0);
}

/** The portfolio as asked: name, view and caps of this plan. @throws RangeError for a cap of an unknown phase or below zero */
export function askedPortfolio(portfolio: Portfolio, ask: PlanAsk): Portfolio {
  const phases = phasesOf(portfolio, ask);
  for (const { phase, cap_cents } of ask.caps ?? []) {
    if (!phases.some((p) => p.id === phase)) throw new RangeError(`phase must be one of ${phases.map((p) => p.id).join(', ')}, got ${phase}`);
    if (!(cap_cents >= 0)) throw new RangeError(`cap must be 0 or more, got ${cap_cents}`);
  }
  const capOf = new Map((ask.caps ?? []).map((c) => [c.phase, c.cap_cents]));
  return {
    ...portfolio,
    settings: { ...portfolio.settings, name: ask.name ?? portfolio.settings.name, view: ask.view ?? portfolio.settings.view },
    phases: phases.map((p) => ({ ...p, cap_cents: capOf.get(p.id) ?? p.cap_cents })),
  };
}
