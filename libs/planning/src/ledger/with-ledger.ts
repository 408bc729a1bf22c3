import { dollarsText } from '#calc';
import type { Plan } from '../plan/plan.js';
import type { PlanFinding } from '../plan/plan-finding.js';
import type { PlanJob } from '../job/plan-job.js';
import { ledgerReport } from './ledger-report.js';

/** The plan with the ledger it was made beside, and a note on every cap that money already spoken for has lowered. */
export function withLedger(plan: Plan, { portfolio, madeOn }: Pick<PlanJob, 'portfolio' | 'madeOn'>): Plan {
  if (portfolio.ledger.length === 0) return plan;
  const ledger = ledgerReport(portfolio, madeOn.slice(0, 10));
  const lowered = ledger.phases.flatMap(({ phase, cap_cents, paid_cents, open_cents, remaining_cents }): PlanFinding[] =>
    cap_cents === null || remaining_cents === null || (paid_cents === 0 && open_cents === 0)
      ? []
      : [{ severity: 'note', subject: phase, text: `of the cap of ${dollarsText(cap_cents)}, ${dollarsText(paid_cents)} is paid and ${dollarsText(open_cents)} ordered and not yet paid; the plan spends at most the ${dollarsText(Math.max(0, remaining_cents))} that remain`, whatToDo: 'nothing; see the ledger' }],
  );
  return { ...plan, ledger, findings: [...plan.findings, ...ledger.findings, ...lowered] };
}
