import type { Bill } from '#calc';
import type { FindingList } from '../finding.js';
import type { Placed } from '../gathered.js';
import { dayAfter, type BillLine } from '../tables/bill-table.js';

type Line = Placed<BillLine & { readonly meter: string }>;

function byMeter(lines: readonly Line[]): Line[][] {
  const meters = new Map<string, Line[]>();
  for (const line of lines) meters.set(line.record.meter, [...(meters.get(line.record.meter) ?? []), line]);
  return [...meters.values()].map((ofOne) => ofOne.sort((a, b) => (a.record.firstDay < b.record.firstDay ? -1 : a.record.firstDay > b.record.firstDay ? 1 : 0)));
}

/** Lines with the meter they belong to: named in the row, or for the whole file. */
function withMeters(lines: readonly Placed<BillLine>[], meter: string | null, findings: FindingList): Line[] {
  return lines.flatMap((line): Line[] => {
    const named = line.record.meter ?? meter;
    if (named !== null) return [{ ...line, record: { ...line.record, meter: named } }];
    findings.add({ ...line.row, column: 'meter', value: null, severity: 'error', code: 'missing-value', expected: 'the id of the meter', whatToDo: 'fill in the meter, or name it for the whole file with --meter' });
    return [];
  });
}

/**
 * Whether the ends of a file are days of reading, on which the next bill starts too: most pairs of bills meet on one day.
 * Such a day belongs to the next bill, or it would count twice.
 */
function endsAreReadings(meters: readonly (readonly Line[])[]): boolean {
  let [shared, following] = [0, 0];
  for (const lines of meters) {
    lines.slice(1).forEach(({ record: { firstDay } }, i) => {
      const end = lines[i]!.record.lastDay;
      if (end === firstDay) shared += 1;
      else if (end !== null && dayAfter(end) === firstDay) following += 1;
    });
  }
  return shared > following;
}

function ended(lines: readonly Line[], endIsReading: boolean, findings: FindingList): Placed<Bill>[] {
  return lines.flatMap(({ record, row }, i): Placed<Bill>[] => {
    if (record.use_kWh === null) return []; // closes the row before
    const next = lines[i + 1]?.record.firstDay;
    const open = record.lastDay === null && (next === undefined || next <= record.firstDay);
    if (open) {
      findings.add({ ...row, column: 'last_day', value: null, severity: 'error', code: 'bill-without-end', expected: 'a last day, or a later row of the same meter', whatToDo: 'nobody knows how many days this use is for; fill in last_day' });
      return [];
    }
    const shifted = endIsReading && record.lastDay !== null && record.lastDay > record.firstDay ? dayAfter(record.lastDay, -1) : record.lastDay;
    const { use_kWh } = record;
    return [{ row, record: { ...record, use_kWh, lastDay: shifted ?? dayAfter(next ?? '', -1) } }];
  });
}

/** The bills of a file: every row with its meter and its last day. What nobody can know is left out with a finding. */
export function billsFrom(lines: readonly Placed<BillLine>[], meter: string | null, findings: FindingList): readonly Placed<Bill>[] {
  const files = new Map<string, Placed<BillLine>[]>();
  for (const line of lines) files.set(line.row.file, [...(files.get(line.row.file) ?? []), line]);
  return [...files].flatMap(([file, ofFile]) => {
    const meters = byMeter(withMeters(ofFile, meter, findings));
    const endIsReading = endsAreReadings(meters);
    if (endIsReading) {
      findings.add({ file, row: null, column: 'last_day', value: null, severity: 'note', code: 'ends-are-readings', expected: 'bills that end the day before the next one starts', whatToDo: 'the last day of most bills is the first day of the next: taken as the day of the reading, which belongs to the next bill' });
    }
    return meters.flatMap((of) => ended(of, endIsReading, findings));
  });
}
