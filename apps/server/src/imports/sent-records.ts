import { Injectable } from '@nestjs/common';
import type { Portfolio } from '#calc';
import { fileOfBytes, type InventoryRecords, readInventory } from '#intake';
import { ProblemException } from '../problem/problem.js';
import { errorOf } from './import-desk.js';
import { nameAsSent, type UploadedFile } from './upload.js';

/** Reads uploaded tables for one question; nothing is kept. */
@Injectable()
export class SentRecords {
  /**
   * Records of the files. Film is cut by the answer, so one row that cannot be read refuses them all.
   *
   * @param only the one table the files are of, whatever their names
   */
  async read(files: readonly UploadedFile[], only: 'siteRecords' | 'rolls', kept: Portfolio): Promise<InventoryRecords> {
    const sent = files.map(({ originalname, buffer }) => fileOfBytes(nameAsSent(originalname), buffer));
    const { records, findings } = await readInventory(sent, { kept, only });
    const errors = findings.filter(({ severity }) => severity === 'error');
    if (errors.length > 0) throw new ProblemException(422, 'Rows of the files cannot be used; correct them and ask again, nothing was kept.', errors.map(errorOf));
    return records;
  }
}
