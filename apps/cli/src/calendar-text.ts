import type { Plan } from '#planning';
import { tableText } from './said.js';

const PART = 4;

/** Working days, the days kept free, and orders without a day, in the words of the crew's table. */
export async function calendarText({ calendar }: Pick<Plan, 'calendar'>): Promise<string> {
  const { inEnglish, told } = await import('#planning');
  const head = [told('calendar.col.day'), told('calendar.col.crew'), told('calendar.col.building'), told('calendar.col.dwelling'), told('calendar.col.part'), told('calendar.col.from'), told('calendar.col.to'), told('calendar.col.minutes'), told('calendar.col.notice'), told('calendar.col.access')].map(inEnglish);
  const rows = calendar.days.flatMap((d) => d.visits.map((v) => [d.day, d.isContractor === true ? inEnglish(told('calendar.byContractor')) : String(d.crew), d.building, v.dwelling, v.parts > 1 ? inEnglish(told('calendar.part', { part: v.part, parts: v.parts })) : '', v.start, v.end, String(v.personMinutes.best), v.isEmpty ? '' : v.noticeBy, inEnglish(told(v.isEmpty ? 'calendar.access.empty' : v.isForMoveOut === true ? 'calendar.access.forMoveOut' : 'calendar.access.notice'))]));
  // Most work takes one day: the column for parts only where there are some.
  const hasParts = rows.some((row) => row[PART] !== '');
  const shown = (row: readonly string[]): string[] => row.filter((_, i) => i !== PART || hasParts);
  const missing = calendar.notPlaced.map((n) => `  ${n.workOrder}: ${n.why}`);
  return [
    rows.length === 0 ? inEnglish(told('calendar.none')) : tableText(shown(head), rows.map(shown)),
    '', calendar.wordsOnReserve,
    ...(calendar.contractorTold === undefined ? [] : [inEnglish(calendar.contractorTold)]),
    ...(calendar.expectedTold ?? []).map(inEnglish),
    ...(missing.length === 0 ? [] : ['', inEnglish(told('calendar.missing')), ...missing]),
  ].join('\n');
}
