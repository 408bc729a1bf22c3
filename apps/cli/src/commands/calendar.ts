import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Plan } from '#planning';
import { keptPlan, withStore } from '../line.js';
import { tableText } from '../said.js';
import { type AddCommand, DATABASE_OPTION, print, type Shared } from './command.js';

const PART = 4;

/** Working days, the days kept free, and orders without a day, in the words of the crew's table. */
async function calendarText({ calendar }: Plan): Promise<string> {
  const { inEnglish, told } = await import('#planning');
  const head = [told('calendar.col.day'), told('calendar.col.crew'), told('calendar.col.building'), told('calendar.col.dwelling'), told('calendar.col.part'), told('calendar.col.from'), told('calendar.col.to'), told('calendar.col.minutes'), told('calendar.col.notice'), told('calendar.col.access')].map(inEnglish);
  const rows = calendar.days.flatMap((d) => d.visits.map((v) => [d.day, String(d.crew), d.building, v.dwelling, v.parts > 1 ? inEnglish(told('calendar.part', { part: v.part, parts: v.parts })) : '', v.start, v.end, String(v.personMinutes.best), v.isEmpty ? '' : v.noticeBy, inEnglish(told(v.isEmpty ? 'calendar.access.empty' : v.isForMoveOut === true ? 'calendar.access.forMoveOut' : 'calendar.access.notice'))]));
  // Most work takes one day: the column for parts only where there are some.
  const hasParts = rows.some((row) => row[PART] !== '');
  const shown = (row: readonly string[]): string[] => row.filter((_, i) => i !== PART || hasParts);
  const missing = calendar.notPlaced.map((n) => `  ${n.workOrder}: ${n.why}`);
  return [
    rows.length === 0 ? inEnglish(told('calendar.none')) : tableText(shown(head), rows.map(shown)),
    '', calendar.wordsOnReserve,
    ...(calendar.expectedTold ?? []).map(inEnglish),
    ...(missing.length === 0 ? [] : ['', inEnglish(told('calendar.missing')), ...missing]),
  ].join('\n');
}

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
