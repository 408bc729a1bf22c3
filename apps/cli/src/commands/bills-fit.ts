import type { Command } from 'commander';
import { billsJob } from '../bills-job.js';
import { fitText } from '../fit-text.js';
import { withStore } from '../line.js';
import { DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable } from '../unusable.js';

interface FitOptions extends Shared {
  readonly database: string;
  readonly meter?: string;
  readonly folder: string;
}

export const fitBillsCommand = (bills: Command): void => {
  bills
    .command('fit')
    .description('split each meter into base load, cooling and heating with their errors; say which bills were used and why others were not')
    .option(...DATABASE_OPTION)
    .option('--meter <id>', 'one meter')
    .option('--folder <folder>', 'where weather files and temperatures.csv lie', '.')
    .option('--json', 'as JSON')
    .action(async (options: FitOptions) => {
      const { fitBills } = await import('#planning');
      const job = await withStore(options.database, (store) => billsJob(store, options.folder));
      if (options.meter !== undefined && !job.portfolio.meters.some(({ id }) => id === options.meter)) throw new Unusable(`There is no meter ${options.meter}.`);
      const wanted = options.meter === undefined ? job.portfolio.bills : job.portfolio.bills.filter(({ meter }) => meter === options.meter);
      const fits = fitBills({ ...job, portfolio: { ...job.portfolio, bills: wanted } });
      print(fits, () => fitText(fits), options.json);
    });
};
