import type { ImportFinding } from '#store';
import type { PlanFinding } from './plan-finding.js';

/** What the intake had to say of the files, as a plan carries it: file, row and column in one place. */
export const carriedFindings = (findings: readonly ImportFinding[]): PlanFinding[] =>
  findings.map((f) => ({
    severity: f.severity,
    subject: [f.file, f.row === null ? null : `row ${String(f.row)}`, f.column].filter((part) => part !== null).join(', '),
    text: `${f.value === null ? '' : `"${f.value}": `}expected ${f.expected}${f.times > 1 ? ` (${String(f.times)} times)` : ''}`,
    whatToDo: f.whatToDo,
  }));
