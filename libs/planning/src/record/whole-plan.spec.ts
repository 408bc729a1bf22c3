import type { Plan } from '../plan/plan.js';
import { wholePlan } from './whole-plan.js';

const line = (dwelling: string, ...windows: string[]) => ({ dwelling, windows: windows.map((window) => ({ window })) });
const plan = (id: string, parent: string | null, ...lines: ReturnType<typeof line>[]): Plan => ({ id, parent, lines }) as unknown as Plan;
const kept = new Map([plan('1', null, line('B/1', 'B/1/W1'), line('B/2', 'B/2/W1')), plan('2', '1', line('B/2', 'B/2/W1', 'B/2/W2'), line('B/3', 'B/3/W1'))].map((p) => [p.id, p]));
const load = (id: string): Promise<Plan | null> => Promise.resolve(kept.get(id) ?? null);
const of = async (newest: Plan): Promise<string[]> => (await wholePlan(newest, load)).lines.map((l) => `${l.dwelling}: ${l.windows.map((w) => w.window).join(' ')}`);

describe('a plan with the work of the revisions before it', () => {
  it('holds the lines that were done before it was made, and of a window filmed in two revisions the newer line', async () => {
    expect(await of(plan('3', '2', line('B/1', 'B/1/W2'), line('B/3', 'B/3/W1')))).toEqual(['B/1: B/1/W2', 'B/3: B/3/W1', 'B/2: B/2/W1 B/2/W2', 'B/1: B/1/W1']);
  });

  it('is the plan itself where it has no parent, or the parent is not kept', async () => {
    expect(await of(plan('1', null, line('B/1', 'B/1/W1')))).toEqual(['B/1: B/1/W1']);
    expect(await of(plan('9', 'lost', line('B/1', 'B/1/W1')))).toEqual(['B/1: B/1/W1']);
  });
});
