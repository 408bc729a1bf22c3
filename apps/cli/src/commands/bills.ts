import type { Command } from 'commander';
import type { Bill } from '#calc';
import { billsText } from '../bills-text.js';
import { reportText, writtenText } from '../findings-text.js';
import { withStore } from '../line.js';
import { fitBillsCommand } from './bills-fit.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { codeOf, writeRejects } from './rejects.js';
import { Unusable } from '../unusable.js';

interface ImportOptions extends Shared {
  readonly database: string;
  readonly meter?: string;
  readonly by: string;
  readonly dryRun?: boolean;
  readonly rejects: string;
}

interface ShowOptions extends Shared {
  readonly database: string;
  readonly meter?: string;
}

const importBills = (bills: Command): void => {
  bills
    .command('import <files...>')
    .description('take bills in: bills.csv, other tables of bills, or interval readings as XML; a folder gives its bills.csv and its XML files')
    .option(...DATABASE_OPTION)
    .option('--meter <id>', 'the meter of files that name none')
    .option('--by <day|block>', 'interval readings as days, or as the blocks they come in', 'day')
    .option('--dry-run', 'say what would be taken; change nothing')
    .option('--rejects <folder>', 'where reject files go', 'out/rejects')
    .option('--all', 'every finding')
    .option('--json', 'the report as JSON')
    .action(async (paths: string[], options: ImportOptions) => {
      if (options.by !== 'day' && options.by !== 'block') throw new Unusable(`--by must be day or block, got ${options.by}`);
      const take = { only: 'bills', by: options.by, ...(options.meter === undefined ? {} : { meter: options.meter }) } as const;
      const { IntakeService, billFilesOf } = await import('#intake');
      const files = await billFilesOf(paths);
      const report = await withStore(options.database, (store) => {
        const service = new IntakeService(store);
        return options.dryRun === true ? service.check(files, take) : service.import(files, new Date().toISOString(), take);
      });
      print(report, () => `${reportText(report, options.all === true)}\n${writtenText(report, options.dryRun === true)}`, options.json);
      writeRejects(report, options.rejects);
      process.exitCode = codeOf(report);
    });
};

const showBills = (bills: Command): void => {
  bills
    .command('show')
    .description('the bills kept, which of them may be compared with the weather, and why the others may not')
    .option(...DATABASE_OPTION)
    .option('--meter <id>', 'one meter')
    .option('--json', 'as JSON')
    .action(async (options: ShowOptions) => {
      const { usableBills } = await import('#calc');
      const kept = await withStore(options.database, (store) => store.load());
      if (options.meter !== undefined && !kept.meters.some(({ id }) => id === options.meter)) throw new Unusable(`There is no meter ${options.meter}.`);
      const asked: readonly Bill[] = options.meter === undefined ? kept.bills : kept.bills.filter(({ meter }) => meter === options.meter);
      const usable = usableBills(asked);
      print({ bills: asked, ...usable }, () => billsText(asked, usable), options.json);
    });
};

/** Everything about bills; each verb is a function above, in the order of the work. */
export const bills: AddCommand = (program) => {
  const group = program.command('bills').description('what meters really used: take bills in, show them, split them into base load, cooling and heating');
  for (const add of [importBills, showBills, fitBillsCommand]) add(group);
};
