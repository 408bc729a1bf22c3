import { reportText, writtenText } from '../findings-text.js';
import { takeIn, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';
import { codeOf, writeRejects } from './rejects.js';

export const importFolder: AddCommand = (program) => {
  program
    .command('import <folder>')
    .description('take the good rows of survey files in; bad rows go to reject files')
    .option(...DATABASE_OPTION)
    .option('--rejects <folder>', 'where reject files go', 'out/rejects')
    .option('--all', 'every finding')
    .option('--json', 'the report as JSON')
    .action(async (folder: string, options: Shared & { readonly database: string; readonly rejects: string }) => {
      const report = await withStore(options.database, (store) => takeIn(store, folder, false), { mayCreate: true });
      print(report, () => `${reportText(report, options.all === true)}\n${writtenText(report, false)}`, options.json);
      writeRejects(report, options.rejects);
      process.exitCode = codeOf(report);
    });
};
