import type { SelectionProblem, SelectionResult } from './problem.js';
import { choiceFindings } from './choice-check.js';
import { priceOut } from './price-out.js';

/** What a one-pass check of a stored result says. */
export interface CertificateFindings {
  /** Nothing found against the result. */
  readonly valid: boolean;
  readonly findings: readonly string[];
  /** Lagrangian value at the stored multipliers, worked out again. */
  readonly bound: number | null;
  /** Value of the choice, worked out again. */
  readonly value: number | null;
  /** What the proof rests on: multipliers alone; a search that this check does not repeat; nothing proved beyond the gap. */
  readonly rests: 'multipliers' | 'search' | 'gap' | 'nothing';
}

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

/**
 * Checks a stored choice and its bound in one pass, with nothing of the search in it.
 *
 *   no choice is worth more than  Σ limits × multipliers + Σ buildings of the best reduced value
 *
 * @param problem as given to select
 * @param result as given back, from a file or fresh
 * @returns all faults found; an infeasible result carries no proof and is said to rest on the search
 * @throws never for a problem select takes
 * @source Lagrangian relaxation of all limits that link buildings; the bound holds for any multipliers ≥ 0
 */
export function checkCertificate(problem: SelectionProblem, result: SelectionResult): CertificateFindings {
  if (result.value === null) {
    return { valid: true, findings: [], bound: null, value: null, rests: result.status === 'infeasible' ? 'search' : 'nothing' };
  }
  const choice = choiceFindings(problem, result.chosen);
  const findings = [...choice.findings];
  const say = (ok: boolean, text: string): void => {
    if (!ok) findings.push(text);
  };
  say(choice.value === result.value, `value is ${String(choice.value)}, result says ${String(result.value)}`);
  say(result.cost_cents.length === choice.cost_cents.length && choice.cost_cents.every((cost, t) => cost === result.cost_cents[t]),
    `cost by phase is ${choice.cost_cents.join(', ')}, result says ${result.cost_cents.join(', ')}`);
  const { certificate } = result;
  const priced = priceOut(problem, certificate.multipliers);
  findings.push(...priced.findings);
  const slack = 1e-6 + 1e-12 * priced.size;
  // A bound that is whole but for rounding counts as whole: a claim one below it would prove too much.
  say(certificate.bound >= Math.floor(priced.bound + 1e-9 + 1e-14 * priced.size) && certificate.bound <= Math.floor(priced.bound + 2 * slack),
    `the multipliers give a bound of ${String(priced.bound)}, certificate says ${String(certificate.bound)}`);
  say(certificate.found === result.value, `certificate found ${String(certificate.found)}, result says ${String(result.value)}`);
  say(result.bound >= result.value && result.bound <= certificate.bound, `bound ${String(result.bound)} must lie between value ${String(result.value)} and the certificate's ${String(certificate.bound)}`);
  const gapOf = (bound: number): number => (bound === 0 ? 0 : (bound - result.value) / bound);
  say(close(result.gap, gapOf(result.bound)), `gap is ${String(gapOf(result.bound))}, result says ${String(result.gap)}`);
  say(close(certificate.gap, gapOf(certificate.bound)), `gap of the certificate is ${String(gapOf(certificate.bound))}, it says ${String(certificate.gap)}`);
  say((result.status === 'optimal') === (result.bound === result.value), `status ${result.status} does not go with bound ${String(result.bound)} and value ${String(result.value)}`);
  const rests = certificate.bound === result.value ? 'multipliers' : result.bound < certificate.bound ? 'search' : 'gap';
  const provedBy = rests === 'multipliers' ? 'bound' : result.status === 'optimal' ? 'search' : 'none';
  say(certificate.provedBy === provedBy, `proved by ${provedBy}, certificate says ${certificate.provedBy}`);
  return { valid: findings.length === 0, findings, bound: priced.bound, value: choice.value, rests };
}
