import { withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

interface ShadowOptions extends Shared {
  readonly database: string;
  readonly dwelling: string;
  readonly window: string;
  readonly at: string;
  readonly summerTime?: boolean;
}

export const shadow: AddCommand = (program) => {
  program
    .command('shadow-line')
    .description('where the shadow should fall on a window at the time of a photograph: finds wrong bearings and overhangs')
    .option(...DATABASE_OPTION)
    .requiredOption('--dwelling <id>', 'for example EC/007')
    .requiredOption('--window <mark>', 'mark of the window, for example W03')
    .requiredOption('--at <time>', 'YYYY-MM-DDTHH:MM on the clock of the place')
    .option('--summer-time', 'that clock showed summer time')
    .option('--json', 'the figures as JSON')
    .action(async (options: ShadowOptions) => {
      const { shadowLine, shadowQuestion } = await import('#planning');
      const portfolio = await withStore(options.database, (store) => store.load());
      const line = shadowLine(shadowQuestion(portfolio, { dwelling: options.dwelling, mark: options.window, at: options.at, isSummerTime: options.summerTime === true }));
      print(line, () => line.text, options.json);
    });
};
