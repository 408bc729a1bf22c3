import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { calendarText } from '../calendar-text.js';
import { keptPlan, withStore } from '../line.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

export const calendar: AddCommand = (program) => {
  program
    .command('calendar')
    .description('the working days of a kept plan, as a table or an iCalendar file')
    .option(...DATABASE_OPTION)
    .option('--plan <id>', 'another plan than the newest')
    .option('--out <file>', 'write an iCalendar file (RFC 5545)')
    .option('--json', 'the calendar as JSON')
    .action(async (options: Shared & { readonly database: string; readonly plan?: string; readonly out?: string }) => {
      const kept = await withStore(options.database, (store) => keptPlan(store, options.plan));
      if (options.out !== undefined) {
        const { calendarFile } = await import('#planning');
        mkdirSync(dirname(options.out), { recursive: true });
        writeFileSync(options.out, await calendarFile(kept));
      }
      const text = await calendarText(kept);
      print(kept.calendar, () => [text, ...(options.out === undefined ? [] : [`plan ${kept.id} → ${options.out}`])].join('\n'), options.json);
    });
};
