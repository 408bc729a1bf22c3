import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { keptPlan, withStore } from '../line.js';
import { tableText } from '../said.js';
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
      const rows = kept.calendar.days.flatMap((d) => d.visits.map((v) => [d.day, String(d.crew), d.building, v.dwelling, v.start, v.end, String(v.personMinutes.best), v.noticeBy, v.isEmpty ? 'empty' : 'notice']));
      const missing = kept.calendar.notPlaced.map((n) => `  ${n.workOrder}: ${n.why}`);
      print(kept.calendar, () => [
        rows.length === 0 ? 'No visit is on the calendar.' : tableText(['day', 'crew', 'building', 'dwelling', 'from', 'to', 'person-minutes', 'notice by', 'access'], rows),
        '', kept.calendar.wordsOnReserve,
        ...(missing.length === 0 ? [] : ['No day was found for:', ...missing]),
        ...(options.out === undefined ? [] : [`plan ${kept.id} → ${options.out}`]),
      ].join('\n'), options.json);
    });
};
