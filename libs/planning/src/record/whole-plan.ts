import type { Plan, PlanLine } from '../plan/plan.js';

/**
 * A plan with the lines of the revisions before it that it no longer holds, because their work was done before it was made. Where two
 * revisions film the same window the newer one counts.
 *
 * @param load a kept plan by its id, null where it is not kept
 */
export async function wholePlan(plan: Plan, load: (id: string) => Promise<Plan | null>): Promise<Plan> {
  const lines: PlanLine[] = [...plan.lines];
  const filmed = new Set(lines.flatMap((l) => l.windows.map((w) => w.window)));
  for (let parent = plan.parent; parent !== null; ) {
    const before = await load(parent);
    if (before === null) break;
    const gone = before.lines.filter((l) => !l.windows.some((w) => filmed.has(w.window)));
    for (const { windows } of gone) for (const { window } of windows) filmed.add(window);
    lines.push(...gone);
    parent = before.parent;
  }
  return { ...plan, lines };
}
