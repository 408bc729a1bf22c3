import type { Finding, IntakeReport } from '#intake';

const MOST = 20;

function findingText(f: Finding): string {
  const place = [f.file, f.row === null ? null : `row ${f.row}`, f.column === null ? null : `column ${f.column}`].filter((p) => p !== null).join(', ');
  const seen = f.value === null ? '' : ` "${f.value}"`;
  const times = f.times > 1 ? ` (${f.times} times)` : '';
  return `${f.severity}: ${place}:${seen} expected ${f.expected}; ${f.whatToDo}${times}`;
}

/** What an intake has to say: counts, then the findings, errors first. */
export function reportText(report: IntakeReport, all: boolean): string {
  const count = (severity: Finding['severity']): number => report.findings.filter((f) => f.severity === severity).length;
  const shown = all ? report.findings : report.findings.slice(0, MOST);
  const more = report.findings.length - shown.length;
  return [
    ...report.files.map((f) => `${f.name}: ${f.takenFor ?? 'not taken'}, ${f.rowsRead} rows`),
    `records: ${report.created} new, ${report.updated} changed, ${report.unchanged} unchanged; ${report.rejected} rows rejected`,
    `findings: ${count('error')} errors, ${count('warning')} warnings, ${count('note')} notes`,
    ...shown.map(findingText),
    ...(more > 0 ? [`… and ${more} more; --all shows them`] : []),
  ].join('\n');
}
