import type { Compiled } from './compiled.js';

/**
 * Cost and minutes by phase of a choice, visits included.
 *
 * @param of compiled problem
 * @param chosen group, option and phase of each line
 * @returns whole cents and minutes by phase
 * @throws never
 */
export function planCost(of: Compiled, chosen: readonly { readonly group: number; readonly option: number; readonly phase: number }[]): { cost: number[]; minutes: number[] } {
  const cost = of.phases.map(() => 0);
  const minutes = of.phases.map(() => 0);
  const visited = new Uint8Array(of.buildings.length * of.phases.length);
  for (const { group, option, phase } of chosen) {
    cost[phase]! += of.cost[option]!;
    minutes[phase]! += of.minutes[option]!;
    const b = of.building[group]!;
    if (b < 0 || visited[b * of.phases.length + phase] === 1) continue;
    visited[b * of.phases.length + phase] = 1;
    cost[phase]! += of.buildings[b]!.visit;
    minutes[phase]! += of.buildings[b]!.visitMinutes;
  }
  return { cost, minutes };
}
