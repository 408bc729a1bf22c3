import { reportText, writtenText } from '../findings-text.js';
import { takeIn, withStore } from '../line.js';
import { type AddCommand, print, type Shared } from './command.js';
import { codeOf } from './rejects.js';

export const check: AddCommand = (program) => {
  program
    .command('check <folder>')
    .description('read survey files and say what is wrong in them; changes nothing')
    .option('--database <place>', 'compare with what this database holds')
    .option('--all', 'every finding')
    .option('--json', 'the report as JSON')
    .action(async (folder: string, options: Shared) => {
      const report = await withStore(options.database ?? ':memory:', (store) => takeIn(store, folder, true));
      print(report, () => `${reportText(report, options.all === true)}\n${writtenText(report, true)}`, options.json);
      process.exitCode = codeOf(report);
    });
};
