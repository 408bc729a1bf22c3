import type { Finding, IntakeReport } from '#intake';
import { counted } from './said.js';

const MOST = 20;

function findingText(f: Finding): string {
  const place = [f.file, f.row === null ? null : `row ${f.row}`, f.column === null ? null : `column ${f.column}`].filter((p) => p !== null).join(', ');
  const seen = f.value === null ? '' : ` ${f.value.includes(' ') ? f.value : `"${f.value}"`};`;
  const times = f.times > 1 ? ` (${f.times} times)` : '';
  return `${f.severity}: ${place}:${seen} expected ${f.expected}; ${f.whatToDo}${times}`;
}

/** What became of the files: said last, where the eye rests. */
export const writtenText = (report: IntakeReport, dryRun: boolean): string => (dryRun ? 'Looked at only: nothing was written.' : report.written ? 'Written to the database.' : 'Nothing was written: all of it is kept already, or cannot be used.');

/** What an intake has to say: counts, then the findings, errors first. */
export function reportText(report: IntakeReport, all: boolean): string {
  const count = (severity: Finding['severity']): number => report.findings.filter((f) => f.severity === severity).length;
  const shown = all ? report.findings : report.findings.slice(0, MOST);
  const more = report.findings.length - shown.length;
  return [
    ...report.files.map((f) => `${f.name}: ${f.takenFor === null ? 'not taken, nobody knows what it holds; ' : f.takenFor === f.name ? '' : `${f.takenFor}, `}${counted(f.rowsRead, 'row')}`),
    `records: ${report.created} new, ${report.updated} changed, ${report.unchanged} unchanged; ${counted(report.rejected, 'row')} rejected`,
    `findings: ${(['error', 'warning', 'note'] as const).map((kind) => counted(count(kind), kind)).join(', ')}`,
    ...shown.map(findingText),
    ...(more > 0 ? [`… and ${more} more; --all shows them`] : []),
  ].join('\n');
}
