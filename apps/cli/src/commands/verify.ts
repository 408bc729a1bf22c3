import type { Plan } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { billsJob } from '../bills-job.js';
import { verifyText } from '../verify-text.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

interface VerifyOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
  readonly folder: string;
}

export const verify: AddCommand = (program) => {
  program
    .command('verify')
    .description('did it pay: bills after the film against bills before, beside meters without film; and what that teaches the next phase')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'the plan the work was done by, with the revisions before it; the newest by default')
    .option('--folder <folder>', 'where weather files and temperatures.csv lie', '.')
    .option('--json', 'as JSON')
    .action(async (options: VerifyOptions) => {
      const { verifyPlan, wholePlan } = await import('#planning');
      const review = await withStore(options.database, async (store) => {
        const plan = (await store.plans()).length === 0 && options.plan === undefined ? null : await wholePlan(await keptPlan(store, options.plan), async (id) => ((await store.loadPlan(id))?.body ?? null) as Plan | null);
        return verifyPlan(await billsJob(store, options.folder), plan);
      });
      print(review, () => verifyText(review), options.json);
    });
};
