import { keptPlan, withStore } from '../line.js';
import { ranksText } from '../plan-text.js';
import { wholeNumber } from '../unusable.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

interface RankOptions extends Shared {
  readonly database: string;
  readonly plan?: string;
  readonly facades?: boolean;
  readonly most: string;
}

export const rank: AddCommand = (program) => {
  program
    .command('rank')
    .description('dwellings (or facades) by yearly cooling-cost reduction per dollar of film, from the newest plan')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--facades', 'facades of dwellings instead of dwellings')
    .option('--most <n>', 'lines to show', '40')
    .option('--json', 'all lines as JSON')
    .action(async (options: RankOptions) => {
      const kept = await withStore(options.database, (store) => keptPlan(store, options.plan));
      const rows = options.facades === true ? kept.rankedFacades : kept.rankedDwellings;
      print(rows, () => ranksText(rows, wholeNumber(options.most, '--most', 1)), options.json);
    });
};
