import { asked, makePlan, withStore } from '../line.js';
import { planText } from '../plan-text.js';
import { type AddCommand, collect, DATABASE_OPTION, print, type Shared } from './command.js';

interface PlanOptions extends Shared {
  readonly database: string;
  readonly cap: string[];
  readonly view?: string;
  readonly seconds: string;
  readonly folder: string;
}

export const plan: AddCommand = (program) => {
  program
    .command('plan')
    .description('rank, choose under the caps, cut and price; the plan is kept in the database')
    .option(...DATABASE_OPTION)
    .option('--cap <phase=dollars>', 'cap of a phase, repeatable; dollars alone give every owner one year with that cap', collect, [])
    .option('--view <view>', 'whole (all payers) or owner')
    .option('--seconds <n>', 'time a round of the selection may take', '3')
    .option('--folder <folder>', 'where weather files named in the inventory lie', '.')
    .option('--quiet', 'no progress')
    .option('--json', 'the plan as JSON')
    .action(async (options: PlanOptions) => {
      const order = { ask: asked(options.cap, options.view), folder: options.folder, timeLimit_s: Number(options.seconds), quiet: options.quiet === true, report: null };
      const made = await withStore(options.database, (store) => makePlan(store, order));
      print(made, () => planText(made), options.json);
    });
};
