import type { SiteRecord } from '#calc';
import type { FindingList } from './finding.js';
import type { Placed } from './gathered.js';

/** One person of a crew may write a row of minutes each: a dwelling has one record of them a day. */
export const bothMinutes = ({ kind }: SiteRecord): string | null => (kind === 'minutes' ? 'add them up in one row' : null);

/** Says which records are of a day yet to come: most often a slip of the pen, and no plan counts them before that day. */
export function warnAhead(records: readonly Placed<SiteRecord>[], today: string, findings: FindingList): void {
  for (const { record, row } of records) {
    if (record.day <= today) continue;
    findings.add({ ...row, column: 'day', value: record.day, severity: 'warning', code: 'day-ahead', expected: `a day up to ${today}`, whatToDo: 'the day is yet to come: correct it if it is mistyped; the record is kept and counts from that day on' });
  }
}
