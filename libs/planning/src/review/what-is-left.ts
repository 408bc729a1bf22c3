import { wholeDollarsText } from '#calc';
import type { Plan } from '../plan/plan.js';

/** Dwellings of an owner that are not in the plan and would pay if their letters came. */
export function waitingDwellings(plan: Pick<Plan, 'buildings' | 'rankedDwellings'>, ownerEntity: string): number {
  const own = new Set(plan.buildings.filter((b) => b.ownerEntity === ownerEntity).map((b) => b.id));
  return plan.rankedDwellings.filter((r) => own.has(r.building) && r.inPlan.startsWith('waits')).length;
}

const joined = (parts: readonly string[]): string => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`);

/** Money of the caps that stays unspent because nothing that may go ahead pays, one sentence an owner, with what waits for letters. */
export function unspentWords(plan: Pick<Plan, 'buildings' | 'rankedDwellings' | 'phases'>): string[] {
  const idle = plan.phases.filter((p) => p.nothingLeftThatPays && p.left_cents > 0);
  return [...new Set(idle.map((p) => p.phase.ownerEntity))].map((owner) => {
    const money = idle.filter((p) => p.phase.ownerEntity === owner).map((p) => `${wholeDollarsText(p.left_cents)} of ${p.phase.id}`);
    const waits = waitingDwellings(plan, owner);
    const letters = waits === 0 ? '' : `; ${String(waits)} more ${waits === 1 ? 'dwelling waits for a letter or test' : 'dwellings wait for letters or tests'} and would pay`;
    return `Unspent: ${joined(money)}: nothing more that may go ahead in ${money.length === 1 ? 'that year' : 'those years'} pays${letters}.`;
  });
}

/** What the ledger already takes off a cap, one sentence; the caps of a plan are what is left of those in the survey. */
export function spokenForWords({ ledger }: Pick<Plan, 'ledger'>): string[] {
  const taken = (ledger?.phases ?? []).filter((p) => p.cap_cents !== null && p.remaining_cents !== null && p.cap_cents !== p.remaining_cents);
  if (taken.length === 0) return [];
  return [`The ledger takes off ${joined(taken.map((p) => `${wholeDollarsText((p.cap_cents ?? 0) - (p.remaining_cents ?? 0))} of the ${wholeDollarsText(p.cap_cents ?? 0)} of ${p.phase}`))}: ordered or paid already.`];
}
