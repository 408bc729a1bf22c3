import type { Assumption } from '#catalogue';
import type { Plan } from '../plan/plan.js';
import type { PlanTerms } from '../plan/terms.js';
import type { ReceiptAssumption } from './receipt.js';

/** Terms of the money side by key, with where each comes from. */
export function termsUsed(terms: PlanTerms, keys: readonly (keyof PlanTerms)[]): ReceiptAssumption[] {
  return keys.flatMap((key) => {
    const term = terms.terms.find((t) => t.key === key);
    return term === undefined ? [] : [{ name: term.label, value: String(term.value), unit: term.unit, source: term.source, basis: term.basis }];
  });
}

/** An entry of the built-in data under a name people know. */
export function builtIn(name: string, entry: Assumption<unknown>): ReceiptAssumption {
  return { name, value: String(entry.value), unit: entry.unit, source: entry.source, basis: entry.basis };
}

/** Gaps of a building's survey that were filled, where the field is one of those asked for. */
export function filledFor(plan: Plan, building: string, isAsked: (field: string) => boolean): ReceiptAssumption[] {
  return plan.assumed
    .filter((a) => (a.subject === building || a.subject.startsWith(`${building} (`) || a.subject.startsWith(`${building}/`)) && isAsked(a.field))
    .map((a) => ({ name: `${a.field}, ${a.subject}`, value: a.value, unit: a.unit, source: a.source, basis: a.basis }));
}
