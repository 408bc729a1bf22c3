import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan } from '#planning';
import { counted } from './said.js';

/** What the people who know the buildings expect, written before the plan was made: a building and where it should stand. */
interface Expectation {
  readonly building: string;
  readonly expected: string;
}

function cameOut(building: string, plan: Plan): string {
  const rows = plan.rankedDwellings.filter((r) => r.building === building);
  const first = rows[0];
  if (first === undefined) return 'no dwelling of it could be ranked';
  const lines = plan.lines.filter((l) => l.building === building);
  const phases = [...new Set(lines.map((l) => l.phase))].join(', ');
  const waits = rows.find((r) => r.inPlan.startsWith('waits'));
  const last = plan.rankedDwellings.at(-1)?.building === building ? ', the last of all' : '';
  const planned = lines.length > 0 ? `${counted(lines.length, 'dwelling')} planned in ${phases}` : waits === undefined ? 'none planned: it does not pay in this view' : `none planned: ${waits.inPlan}`;
  return `ranks ${first.rank} to ${rows.at(-1)?.rank ?? first.rank}${last}, best ${first.reason.split(':')[0] ?? ''}; ${planned}`;
}

/** Prints expectations beside what came out, where the folder holds `expectations.json`. */
export function expectations(folder: string, plan: Plan): string {
  const path = join(folder, 'expectations.json');
  if (!existsSync(path)) return '';
  const { expectations: list } = JSON.parse(readFileSync(path, 'utf8')) as { readonly expectations: readonly Expectation[] };
  return ['', 'Expected, and what came out:', ...list.map((e) => `  ${e.building}: expected ${e.expected}; ${cameOut(e.building, plan)}`)].join('\n');
}
