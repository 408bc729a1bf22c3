import { wholeDollarsText } from '#calc';
import type { Plan } from '../plan/plan.js';
import { inEnglish, told } from '../words/told.js';
import type { CapAfterWork, RedoWork, SettledWork } from './settled-work.js';

const panes = (count: number): string => inEnglish(told('count.panes', { count }));
const dwellings = (count: number): string => inEnglish(told('count.dwellings', { count }));

const panesOf = (work: readonly RedoWork[]): number => work.reduce((sum, w) => sum + w.panes.length, 0);

function capWords({ phase, cap_cents, spent_cents, kept_cents, left_cents, isOver }: CapAfterWork, { spent, redoWork = [] }: SettledWork): string[] {
  const isLedger = spent.find((s) => s.phase === phase)?.basis === 'ledger';
  // What the ledger takes off a cap is said for every plan.
  if (isLedger && kept_cents === 0 && !isOver) return [];
  const gone = isLedger ? 'is paid or ordered by the ledger' : 'is spent (the film of the year, and the work done at its recorded minutes)';
  const kept = kept_cents === 0 ? '' : `, ${wholeDollarsText(kept_cents)} is kept for ${panes(panesOf(redoWork.filter((w) => w.phase === phase)))} to be done again`;
  const over = spent_cents > cap_cents ? `; that is ${wholeDollarsText(spent_cents - cap_cents)} more than the cap: tell the owner` : '';
  return [`${phase}: of the cap of ${wholeDollarsText(cap_cents)}, ${wholeDollarsText(spent_cents)} ${gone}${kept}${over}; ${isOver ? 'the year is over, nothing more is planned in it' : `${wholeDollarsText(left_cents)} is left to plan with`}.`];
}

function timeWords({ time }: SettledWork): string[] {
  if (time.visits === 0) return [];
  const share = Math.round(Math.abs(time.factor - 1) * 100);
  const change = share === 0 ? 'as the time model has them' : `${String(share)} % ${time.factor > 1 ? 'longer' : 'shorter'} than the time model has them`;
  return [`Minutes of this plan are ${change}: ${String(time.visits)} timed ${time.visits === 1 ? 'dwelling' : 'dwellings'} took ${time.recorded.toFixed(2)} times the planned minutes, weighed with the model.`];
}

/** What a plan made again starts from, in sentences: what is done, why its caps are smaller, and how the minutes moved. */
export function settledWords({ settled }: Pick<Plan, 'settled'>): string[] {
  if (settled === null) return [];
  const done = settled.done.filter((d) => d.panesDone > 0);
  const waits = panesOf((settled.redoWork ?? []).filter((w) => w.waitsForGlass));
  const glass = waits === 0 ? '' : `, ${waits === settled.redo.length ? 'all' : String(waits)} of them only when new glass is in`;
  const shut = settled.noAccess.length === 0 ? '' : `; nobody opened in ${dwellings(settled.noAccess.length)}`;
  const again = settled.redo.length === 0 ? '' : `; ${panes(settled.redo.length)} to be done again or not reached${glass}`;
  return [
    `Made again after plan ${settled.parent}, with what was recorded up to ${settled.asOf}: ${panes(done.reduce((sum, d) => sum + d.panesDone, 0))} done in ${dwellings(done.length)}${again}${shut}.`,
    ...(settled.caps ?? []).flatMap((cap) => capWords(cap, settled)),
    ...timeWords(settled),
  ];
}
