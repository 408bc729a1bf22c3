import { ledgerText } from '../ledger-text.js';
import { withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { Unusable } from '../unusable.js';

export const ledger: AddCommand = (program) => {
  program
    .command('ledger')
    .description('money already spoken for by fiscal year: quotes, orders, invoices, payments, and what the caps still leave')
    .option(...DATABASE_OPTION)
    .option('--on <day>', 'the day on which quotes are looked at, year-month-day; today if left out')
    .option('--json', 'as JSON')
    .action(async (options: Shared & { readonly database: string; readonly on?: string }) => {
      const { ledgerReport } = await import('#planning');
      const on = options.on ?? new Date().toISOString().slice(0, 10);
      if (!/^\d{4}-\d{2}-\d{2}$/.test(on)) throw new Unusable(`--on must be a day as year-month-day, got ${on}`);
      const report = ledgerReport(await withStore(options.database, (store) => store.load()), on);
      print(report, () => ledgerText(report), options.json);
    });
};
