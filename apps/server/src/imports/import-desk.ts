import { Injectable } from '@nestjs/common';
import { fileOfBytes, IntakeService, type Finding, type IntakeReport, type TakeOptions } from '#intake';
import { Edge } from '../edge.js';
import { ProblemException, type ProblemError } from '../problem/problem.js';
import { nameAsSent, type UploadedFile } from './upload.js';

/** A finding as an error of a problem. */
export const errorOf = ({ code, expected, whatToDo, file, row, column }: Finding): ProblemError => ({
  code,
  detail: `expected ${expected}; ${whatToDo}`,
  file,
  ...(row !== null && { row }),
  ...(column !== null && { column }),
});

/** Whether a record of the files is new or changed, or a row of theirs is as it was before. What is kept already is among the unchanged, so these do not tell. An error of a file without a row is of the whole file. */
function hasUse({ created, updated, files: all, findings, rejected }: IntakeReport): boolean {
  const refused = new Set(findings.filter((f) => f.severity === 'error' && f.row === null).map((f) => f.file));
  const files = all.filter((f) => !refused.has(f.name));
  const rows = files.reduce((sum, { takenFor, rowsRead }) => sum + (takenFor?.endsWith('.json') === true ? 0 : rowsRead), 0);
  return created + updated > 0 || rows > rejected;
}

/** Takes uploaded files in; files of which nothing can be used are a problem, all others a report. */
@Injectable()
export class ImportDesk {
  constructor(
    private readonly intake: IntakeService,
    private readonly edge: Edge,
  ) {}

  async take(files: readonly UploadedFile[] | undefined, dryRun: boolean, options: TakeOptions = {}): Promise<IntakeReport> {
    if (files === undefined || files.length === 0) {
      throw new ProblemException(422, 'No file was sent; send the survey files as multipart/form-data.', [{ code: 'no-file', detail: 'no file was sent', pointer: '/files' }]);
    }
    const sent = files.map(({ originalname, buffer }) => fileOfBytes(nameAsSent(originalname), buffer));
    const now = this.edge.now();
    const report = dryRun ? await this.intake.check(sent, { today: now.slice(0, 10), ...options }) : await this.intake.import(sent, now, options);
    const errors = report.findings.filter(({ severity }) => severity === 'error');
    if (errors.length > 0 && !hasUse(report)) throw new ProblemException(422, 'Nothing in the files can be used; the errors say why.', errors.map(errorOf));
    return report;
  }
}
