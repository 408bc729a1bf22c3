import { keptPlan, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

export const sign: AddCommand = (program) => {
  program
    .command('sign <plan>')
    .description('sign a kept plan: it stands as the plan of record and is never replaced, only followed by a new revision')
    .option(...DATABASE_OPTION)
    .option('--json', 'as JSON')
    .action(async (id: string, options: Shared & { readonly database: string }) => {
      await withStore(options.database, async (store) => {
        await keptPlan(store, id);
        await store.signPlan(id);
      });
      print({ plan: id, signed: true }, () => `plan ${id} is signed`, options.json);
    });
};
