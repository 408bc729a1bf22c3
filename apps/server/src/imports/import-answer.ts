import { ApiProperty } from '@nestjs/swagger';
import type { Finding, IntakeReport } from '#intake';

export class CountsAnswer {
  @ApiProperty({ type: 'integer' }) created: number;
  @ApiProperty({ type: 'integer' }) updated: number;
  @ApiProperty({ type: 'integer' }) unchanged: number;
}

export class FindingAnswer implements Finding {
  @ApiProperty() file: string;
  @ApiProperty({ type: 'integer', nullable: true, description: 'line of the file, counted from 1' }) row: number | null;
  @ApiProperty({ type: String, nullable: true }) column: string | null;
  @ApiProperty({ type: String, nullable: true, description: 'what stands there' }) value: string | null;
  @ApiProperty({ enum: ['error', 'warning', 'note'] }) severity: Finding['severity'];
  @ApiProperty({ example: 'not-a-length' }) code: string;
  @ApiProperty() expected: string;
  @ApiProperty() whatToDo: string;
  @ApiProperty({ type: 'integer', description: 'how many rows say the same' }) times: number;
}

export class RejectedAnswer {
  @ApiProperty({ example: 'windows.rejected.csv' }) name: string;
  @ApiProperty({ example: 'windows.csv' }) of: string;
  @ApiProperty({ type: 'integer' }) rows: number;
  @ApiProperty({ description: 'the rejected rows with their original columns and the reason, as CSV' }) text: string;
}

export class ReadFileAnswer {
  @ApiProperty() name: string;
  @ApiProperty({ type: String, nullable: true, description: 'the table it was taken for; null when nobody knows it' }) takenFor: string | null;
  @ApiProperty({ type: 'integer' }) rowsRead: number;
  @ApiProperty({ type: String, nullable: true }) encoding: string | null;
}

export class ListChangesAnswer {
  @ApiProperty({ example: 'windows' }) list: string;
  @ApiProperty({ type: [String], description: 'ids that are new' }) created: string[];
  @ApiProperty({ type: [String], description: 'ids of which a field changes' }) updated: string[];
  @ApiProperty({ type: 'integer' }) unchanged: number;
  @ApiProperty({ type: [String], description: 'ids kept from earlier that these files do not name; they stay' }) missing: string[];
}

/** What became of the files. */
export class ImportAnswer {
  @ApiProperty({ description: 'true: only looked at, nothing was changed' }) dryRun: boolean;
  @ApiProperty({ description: 'whether anything was written' }) written: boolean;
  @ApiProperty({ type: CountsAnswer, description: 'records; in a dry run what an import would do' }) counts: CountsAnswer;
  @ApiProperty({ type: [ReadFileAnswer] }) files: ReadFileAnswer[];
  @ApiProperty({ type: [ListChangesAnswer] }) changes: ListChangesAnswer[];
  @ApiProperty({ type: [FindingAnswer] }) findings: FindingAnswer[];
  @ApiProperty({ type: [RejectedAnswer] }) rejects: RejectedAnswer[];
}

export function importAnswer({ created, updated, unchanged, ...report }: IntakeReport, dryRun: boolean): ImportAnswer {
  return {
    dryRun,
    written: report.written,
    counts: { created, updated, unchanged },
    files: report.files.map(({ name, takenFor, rowsRead, encoding = null }) => ({ name, takenFor, rowsRead, encoding })),
    changes: report.changes.map((each) => ({ ...each, created: [...each.created], updated: each.updated.map(({ id }) => id), missing: [...each.missing] })),
    findings: report.findings.map((each) => ({ ...each })),
    rejects: report.rejects.map((each) => ({ ...each })),
  };
}

export class PastImportAnswer {
  @ApiProperty() id: string;
  @ApiProperty() file: string;
  @ApiProperty({ description: 'SHA-256 of the file' }) sha256: string;
  @ApiProperty({ format: 'date-time' }) at: string;
  @ApiProperty({ type: String, nullable: true }) encoding: string | null;
  @ApiProperty({ type: 'integer' }) rowsRead: number;
  @ApiProperty({ type: 'integer' }) created: number;
  @ApiProperty({ type: 'integer' }) updated: number;
  @ApiProperty({ type: 'integer' }) unchanged: number;
  @ApiProperty({ type: 'integer' }) rejected: number;
}
