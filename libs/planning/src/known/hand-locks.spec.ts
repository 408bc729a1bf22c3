import type { Lock } from '#calc';
import { handLocks } from './hand-locks.js';
import type { KnownPortfolio } from './known-portfolio.js';

const known = { dwellings: [{ windows: [{ id: 'B1/1/W1', azimuth_deg: 180 }, { id: 'B1/1/W2', azimuth_deg: 270 }] }] } as unknown as Pick<KnownPortfolio, 'dwellings'>;
const lock = (over: Partial<Lock>): Lock => ({ subject: 'B1/1', direction: 'in', azimuth_deg: null, phase: null, film: null, reason: 'asked for', role: 'manager', date: '2026-07-01', ...over });

describe('a lock by hand', () => {
  it('of a dwelling goes to the selection as it is', () => {
    expect(handLocks([lock({})], known).chosen).toEqual([lock({})]);
  });
  it('that puts a window out takes film off that window and leaves the dwelling free', () => {
    const locks = handLocks([lock({ subject: 'B1/1/W2', direction: 'out', reason: 'stained glass' })], known);
    expect([...locks.windowsOut]).toEqual([['B1/1/W2', 'locked out by hand: stained glass']]);
    expect(handLocks([lock({ subject: 'B1/1/W2', direction: 'out', reason: 'done by 2026-08-04', role: 'site record' })], known).windowsOut.get('B1/1/W2')).toBe('done by 2026-08-04');
    expect(locks.chosen).toEqual([]);
  });
  it('that puts a window in binds its side of the dwelling', () => {
    expect(handLocks([lock({ subject: 'B1/1/W2' })], known).chosen).toEqual([lock({ subject: 'B1/1', azimuth_deg: 270 })]);
  });
  it('of a pane binds its window', () => {
    expect(handLocks([lock({ subject: 'B1/1/W1/2', direction: 'out' })], known).windowsOut.has('B1/1/W1')).toBe(true);
  });
  it('of a window that is not there is an error, never silent', () => {
    const { chosen, findings } = handLocks([lock({ subject: 'B1/1/W9' })], known);
    expect(chosen).toEqual([]);
    expect(findings).toMatchObject([{ severity: 'error', subject: 'B1/1/W9' }]);
  });
});
