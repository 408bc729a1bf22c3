import type { Lock } from '#calc';
import { sortedBy } from '../grouped.js';
import type { KnownPortfolio } from './known-portfolio.js';
import type { PlanFinding } from '../plan/plan-finding.js';

/** Choices fixed by hand, each where it takes effect. */
export interface HandLocks {
  /** Of dwellings and their facades: for the selection. */
  readonly chosen: readonly Lock[];
  /** Why, by id of a window locked out: no film goes on it. */
  readonly windowsOut: ReadonlyMap<string, string>;
  readonly findings: readonly PlanFinding[];
}

const partsOf = (lock: Lock): string[] => lock.subject.split('/');

const lost = (lock: Lock): PlanFinding => ({
  severity: 'error',
  subject: lock.subject,
  text: 'a lock names a window that is not among the windows of the computed dwellings',
  whatToDo: 'name the window by building, dwelling and mark as in the ranked inventory',
});

/**
 * Sorts the locks by what they bind. A window locked out carries no film; a window locked in binds its side of the dwelling, since a side is
 * filmed as a whole; a pane binds its window.
 */
export function handLocks(locks: readonly Lock[], known: Pick<KnownPortfolio, 'dwellings'>): HandLocks {
  const azimuthOf = new Map(known.dwellings.flatMap((d) => d.windows.map((w): [string, number] => [w.id, w.azimuth_deg])));
  const chosen: Lock[] = [];
  const windowsOut = new Map<string, string>();
  const findings: PlanFinding[] = [];
  for (const lock of sortedBy(locks, (l) => `${l.subject}|${l.direction}|${String(l.azimuth_deg)}`)) {
    const parts = partsOf(lock);
    const window = parts.slice(0, 3).join('/');
    if (parts.length < 3) chosen.push(lock);
    else if (!azimuthOf.has(window)) findings.push(lost(lock));
    else if (lock.direction === 'out') windowsOut.set(window, lock.role === 'site record' ? lock.reason : `locked out by hand: ${lock.reason}`);
    else chosen.push({ ...lock, subject: parts.slice(0, 2).join('/'), azimuth_deg: azimuthOf.get(window) ?? null });
  }
  return { chosen, windowsOut, findings };
}
