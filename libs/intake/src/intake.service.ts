import { createHash, randomUUID } from 'node:crypto';
import type { InventoryRow } from '#calc';
import { Injectable } from '@nestjs/common';
import { PortfolioStore, type FileWithFindings, type PortfolioChanges } from '#store';
import { compareRecords, fileOfRecord, type Comparison, type ListChanges, type RecordList } from './changes.js';
import { filesOf, type InventoryFile } from './files/inventory-file.js';
import type { Finding } from './finding.js';
import { portfolioOf, readInventory, type ExtraCells, type FileNote, type Intake, type IntakeOptions } from './read-inventory.js';
import type { RejectFile } from './reject-file.js';

/** What a dry run or an import has to say. */
export interface IntakeReport {
  readonly files: readonly FileNote[];
  readonly findings: readonly Finding[];
  readonly changes: readonly ListChanges[];
  readonly created: number;
  readonly updated: number;
  readonly unchanged: number;
  /** Rows that were not taken, and the tables to correct them in. */
  readonly rejected: number;
  readonly rejects: readonly RejectFile[];
  readonly extras: readonly ExtraCells[];
  /** False for a dry run, and for an import that had nothing to write. */
  readonly written: boolean;
}

/** What a person says beside the files. */
export type TakeOptions = Pick<IntakeOptions, 'meter' | 'by' | 'only' | 'today'>;

/** Takes inventories in: reads, says what would change, and writes only when asked to. */
@Injectable()
export class IntakeService {
  constructor(private readonly store: PortfolioStore) {}

  /** The dry run: findings and what an import would do. Nothing changes. */
  async check(source: string | readonly InventoryFile[], options: TakeOptions = {}): Promise<IntakeReport> {
    return (await this.compare(source, options)).report;
  }

  /**
   * Takes the good rows in, all in one transaction; bad rows come back as reject files. The same files again change nothing.
   *
   * @param at ISO date and time of the import; site records of a later day are said
   * @param options what one file alone cannot say: the meter of bills, the table of files with other names
   */
  async import(source: string | readonly InventoryFile[], at: string = new Date().toISOString(), options: TakeOptions = {}): Promise<IntakeReport> {
    const files = await filesOf(source);
    const { report, intake, comparison, isNew } = await this.compare(files, { today: at.slice(0, 10), ...options });
    const { settings, ...records } = portfolioOf(intake, at.slice(0, 10));
    const putSettings = comparison.settings || (isNew && Object.values(records).some((list) => list.length > 0));
    if (Object.keys(comparison.write).length === 0 && !putSettings) return report;
    const changes = { ...comparison.write, ...(putSettings && { settings }) } as PortfolioChanges;
    await this.store.write(changes, await notesOf({ files, intake, report, at }));
    return { ...report, written: true };
  }

  private async compare(source: string | readonly InventoryFile[], options: TakeOptions): Promise<{ report: IntakeReport; intake: Intake; comparison: Comparison; isNew: boolean }> {
    const kept = await this.store.find();
    const intake = await readInventory(source, { ...options, kept });
    const comparison = compareRecords(kept, intake.records);
    const sum = (of: (list: ListChanges) => number): number => comparison.lists.reduce((total, list) => total + of(list), 0);
    const report: IntakeReport = {
      files: intake.files, findings: intake.findings, changes: comparison.lists,
      created: sum(({ created }) => created.length), updated: sum(({ updated }) => updated.length), unchanged: sum(({ unchanged }) => unchanged),
      rejected: intake.rejects.reduce((total, { rows }) => total + rows, 0), rejects: intake.rejects, extras: intake.extras, written: false,
    };
    return { report, intake, comparison, isNew: kept === null };
  }
}

async function sha256Of(file: InventoryFile): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of file.open() as AsyncIterable<Buffer>) hash.update(piece);
  return hash.digest('hex');
}

/** What each file brought, for the log of imports. */
function notesOf(of: { readonly files: readonly InventoryFile[]; readonly intake: Intake; readonly report: IntakeReport; readonly at: string }): Promise<FileWithFindings[]> {
  const { intake, report, at } = of;
  const created = new Map(report.changes.map(({ list, created: ids }) => [list as string, new Set(ids)]));
  const updated = new Map(report.changes.map(({ list, updated: all }) => [list as string, new Set(all.map(({ id }) => id))]));
  const tally = new Map<string, { created: number; updated: number; unchanged: number }>();
  for (const [list, records] of Object.entries(intake.records)) {
    if (!Array.isArray(records)) continue;
    for (const record of records as { readonly id?: string; readonly label?: string; readonly inventoryRow?: InventoryRow | null }[]) {
      const id = record.id ?? record.label ?? '';
      const counts = tally.get(fileOfRecord(list as RecordList, record)) ?? { created: 0, updated: 0, unchanged: 0 };
      tally.set(fileOfRecord(list as RecordList, record), counts);
      if (created.get(list)?.has(id) === true) counts.created += 1;
      else if (updated.get(list)?.has(id) === true) counts.updated += 1;
      else counts.unchanged += 1;
    }
  }
  const taken = of.files.filter(({ name }) => intake.files.some((note) => note.name === name && note.readable));
  const names = new Set(taken.map(({ name }) => name));
  // What is said of files that were not there is kept with the first that was.
  const keeper = (finding: Finding): string | undefined => (names.has(finding.file) ? finding.file : taken[0]?.name);
  return Promise.all(
    taken.map(async (file): Promise<FileWithFindings> => {
      const note = intake.files.find(({ name }) => name === file.name);
      return {
        id: randomUUID(), file: file.name, sha256: await sha256Of(file), at, encoding: note?.encoding ?? null, rowsRead: note?.rowsRead ?? 0,
        ...(tally.get(file.name) ?? { created: 0, updated: 0, unchanged: 0 }),
        rejected: report.rejects.find(({ of: name }) => name === file.name)?.rows ?? 0,
        findings: intake.findings.filter((finding) => keeper(finding) === file.name).map(({ code: _, ...finding }) => finding),
      };
    }),
  );
}
