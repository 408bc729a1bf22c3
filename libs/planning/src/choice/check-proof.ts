import { checkCertificate } from '#calc';
import type { Plan } from '../plan/plan.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { ProofRecord } from './proof-record.js';

/** What a check of a plan's proof has shown. */
export interface ProofCheck {
  readonly valid: boolean;
  /** One sentence a person can act on. */
  readonly text: string;
  readonly findings: readonly PlanFinding[];
}

const fault = (text: string): PlanFinding => ({ severity: 'error', subject: 'proof of the choice', text, whatToDo: 'do not rely on the bound of this plan: make the plan again, and compare' });

const same = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(a), Math.abs(b));

/** Faults between the record and what the plan prints of it. */
function againstPlan(plan: Pick<Plan, 'proof' | 'lines'>, { problem, result }: ProofRecord): string[] {
  const { proof } = plan;
  const faults: string[] = [];
  if (proof.status !== result.status) faults.push(`the plan says ${proof.status}, its record ${result.status}`);
  if (result.value !== null && !(same(proof.value_cents, result.value) && same(proof.bound_cents, result.bound) && same(proof.gap, result.gap))) {
    faults.push(`the plan prints value ${String(proof.value_cents)}, bound ${String(proof.bound_cents)} and gap ${String(proof.gap)}; its record ${String(result.value)}, ${String(result.bound)} and ${String(result.gap)}`);
  }
  const listed = new Set(problem.groups.flatMap((g) => g.options.map((o) => o.id)));
  const composed = [...listed].some((id) => id.startsWith('elevations '));
  for (const line of plan.lines) if (!composed && !listed.has(`${line.option.id}@${line.phase}`)) faults.push(`the line of ${line.dwelling} in ${line.phase} is not among the options the choice was made from`);
  return faults;
}

const RESTS = {
  multipliers: 'its prices alone show that nothing is worth more',
  search: 'rules, value and cost hold and the prices give the bound; that nothing lies between value and bound rests on the search, which a check does not repeat',
  gap: 'rules, value, cost and bound hold; what lies between value and bound is open',
  nothing: 'nothing was found and nothing is claimed',
} as const;

/**
 * Checks the proof kept with a plan again, in one pass and with nothing of the search in it: every rule of the choice, its value and cost, and
 * the bound worked out from the kept prices; then whether the plan prints what its record says.
 */
export function checkProof(plan: Pick<Plan, 'proof' | 'lines'>): ProofCheck {
  const { record } = plan.proof;
  if (record === undefined) return { valid: true, text: 'This plan was kept before proofs were recorded: there is nothing to check.', findings: [] };
  const check = checkCertificate(record.problem, record.result);
  const findings = [...check.findings, ...againstPlan(plan, record)].map(fault);
  if (findings.length > 0) return { valid: false, text: `The proof does not hold: ${findings.map((f) => f.text).join('; ')}.`, findings };
  return { valid: true, text: `The proof holds: ${RESTS[check.rests]}.`, findings };
}

/** The plan with an error for each fault of its proof; a plan whose proof holds comes back as it was. */
export function checkedPlan(plan: Plan): Plan {
  const known = new Set(plan.findings.map((f) => f.text));
  const fresh = checkProof(plan).findings.filter((f) => !known.has(f.text));
  return fresh.length === 0 ? plan : { ...plan, findings: [...plan.findings, ...fresh] };
}
