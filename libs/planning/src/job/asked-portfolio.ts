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

/** Phases of a portfolio that states none: one year from the study start for each owner, with the one cap asked. */
function phasesOf(portfolio: Portfolio, ask: PlanAsk): readonly Phase[] {
  if (ask.oneCap_cents === undefined) return portfolio.phases;
  const first = portfolio.settings.studyStart;
  const end = new Date(Date.UTC(Number(first.slice(0, 4)) + 1, Number(first.slice(5, 7)) - 1, Number(first.slice(8, 10)) - 1)).toISOString().slice(0, 10);
  return portfolio.ownerEntities.map((owner): Phase => ({ id: `${owner.id}/one cap`, ownerEntity: owner.id, name: 'one cap', firstDay: first, lastDay: end, cap_cents: ask.oneCap_cents ?? 0, crewMinutes: null }));
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
