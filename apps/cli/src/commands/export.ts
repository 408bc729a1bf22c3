import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Plan } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

export async function writeWorkbook(made: Plan, out: string): Promise<void> {
  const { writeRolloutWorkbook } = await import('#workbook');
  mkdirSync(dirname(out), { recursive: true });
  await writeRolloutWorkbook(made, out);
}

export const exportPlan: AddCommand = (program) => {
  program
    .command('export')
    .description('write the rollout workbook of a kept plan')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--out <file>', 'the workbook', 'out/rollout.xlsx')
    .option('--json', 'what was written, as JSON')
    .action(async (options: Shared & { readonly database: string; readonly plan?: string; readonly out: string }) => {
      const kept = await withStore(options.database, (store) => keptPlan(store, options.plan));
      await writeWorkbook(kept, options.out);
      print({ plan: kept.id, workbook: options.out }, () => `plan ${kept.id} → ${options.out}`, options.json);
    });
};
