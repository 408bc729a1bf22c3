import type { SiteRecord } from '#calc';
import type { EntityManager } from 'typeorm';
import type { FileTakenIn } from './import-log.js';
import { ImportRow } from './kept/import.js';
import { ImportMarkRow } from './kept/import-mark.js';
import { keptSiteRecords, SiteRecordRow } from './kept/site-record.js';
import { putRows, sameText } from './record-write.js';
import { StoreFault } from './store-fault.js';

/** What undoing an import did, in records. */
export interface UndoCounts {
  readonly removed: number;
  readonly restored: number;
  /** Changed again since, so left as they are now. */
  readonly keptAsChanged: number;
}

/** Notes what an import is about to do to site records: called inside its transaction, before they are written. */
export async function markImport(rows: EntityManager, records: readonly SiteRecord[], files: readonly FileTakenIn[]): Promise<void> {
  if (records.length === 0 || files.length === 0) return;
  const kept = new Map((await rows.find(SiteRecordRow)).map((row) => [row.id, sameText(keptSiteRecords.toRecord(row))]));
  const importOf = new Map(files.map((file) => [file.file, file.id]));
  const marks = [...new Map(records.map((record) => [record.id, record])).values()].flatMap((record) => {
    const after = sameText(record);
    const importId = importOf.get(record.inventoryRow.file);
    const before = kept.get(record.id) ?? null;
    return importId === undefined || before === after ? [] : [{ importId, recordId: record.id, before, after }];
  });
  await putRows(rows, ImportMarkRow, marks);
}

/**
 * Takes back what an import did to site records: removes what it created, restores what it changed, and leaves what was changed again since.
 *
 * @throws StoreFault when there is no such import, or it has nothing that can be undone
 */
export async function undoImport(rows: EntityManager, importId: string): Promise<UndoCounts> {
  if (!(await rows.existsBy(ImportRow, { id: importId }))) throw new StoreFault(`There is no import ${importId}.`);
  const marks = await rows.findBy(ImportMarkRow, { importId });
  if (marks.length === 0) throw new StoreFault(`Import ${importId} brought no site records, or was undone already; only site records can be undone.`);
  const counts = { removed: 0, restored: 0, keptAsChanged: 0 };
  for (const mark of marks) {
    const row = await rows.findOneBy(SiteRecordRow, { id: mark.recordId });
    if (row === null || sameText(keptSiteRecords.toRecord(row)) !== mark.after) counts.keptAsChanged += 1;
    else if (mark.before === null) {
      await rows.delete(SiteRecordRow, { id: mark.recordId });
      counts.removed += 1;
    } else {
      await putRows(rows, SiteRecordRow, [keptSiteRecords.toRow(JSON.parse(mark.before) as SiteRecord)]);
      counts.restored += 1;
    }
  }
  await rows.delete(ImportMarkRow, { importId });
  return counts;
}
