import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { IntakeReport } from '#intake';
import { DONE, WITH_REJECTS } from './command.js';

export const codeOf = (report: IntakeReport): number => (report.rejected > 0 || report.findings.some((f) => f.severity === 'error') ? WITH_REJECTS : DONE);

export function writeRejects(report: IntakeReport, folder: string): void {
  for (const reject of report.rejects) {
    mkdirSync(folder, { recursive: true });
    const path = join(folder, reject.name);
    writeFileSync(path, reject.text);
    console.error(`rejected rows, with the reason beside: ${path}`);
  }
}
