import type { Lock } from '#calc';
import type { DoneLine } from './settled-work.js';

const partsOf = (lock: Lock): string[] => lock.subject.split('/');

/** Whether a lock speaks of work that is done: of one of its windows, or asks for more of the dwelling as a whole. */
function isSettled(lock: Lock, done: DoneLine): boolean {
  const parts = partsOf(lock);
  if (parts.slice(0, 2).join('/') !== done.dwelling) return false;
  const windows = done.windows;
  if (windows === undefined) return true; // plans kept before windows were: the whole dwelling stands
  if (parts.length > 2) return windows.some((w) => w.window === parts.slice(0, 3).join('/'));
  const sides = new Set((done.option.split('|')[1] ?? '').split('+').map(Number));
  return lock.direction === 'in' && (lock.azimuth_deg === null || sides.has(lock.azimuth_deg));
}

/**
 * Locks of the next revision: the windows that carry film take no more, the other sides of the dwelling stay open, and older locks on what is
 * done fall away.
 */
export function locksAfter(locks: readonly Lock[], done: readonly DoneLine[], asOf: string): Lock[] {
  const outs = done.flatMap((d): Lock[] => {
    const base = { direction: 'out', azimuth_deg: null, phase: null, film: null, reason: `done by ${d.lastDay}`, role: 'site record', date: asOf } as const;
    return d.windows === undefined ? [{ ...base, subject: d.dwelling }] : d.windows.map(({ window }) => ({ ...base, subject: window }));
  });
  return [...locks.filter((l) => l.role !== 'site record' && !done.some((d) => isSettled(l, d))), ...outs];
}
