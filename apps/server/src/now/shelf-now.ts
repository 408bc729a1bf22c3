import { Injectable } from '@nestjs/common';
import { filmOnShelf, type StockRoll } from '#planning';
import { PortfolioStore } from '#store';
import { SentRecords } from '../imports/sent-records.js';
import type { UploadedFile } from '../imports/upload.js';
import { KeptPlans } from '../plans/kept-plans.js';
import { ProblemException } from '../problem/problem.js';

/** Film on the shelf for the dwellings somebody asks about. */
@Injectable()
export class ShelfNow {
  constructor(
    private readonly store: PortfolioStore,
    private readonly plans: KeptPlans,
    private readonly sent: SentRecords,
  ) {}

  /** @throws ProblemException naming each dwelling that is not there, or each row that cannot be used */
  async film(files: readonly UploadedFile[] | undefined, dwellings: readonly string[]): Promise<readonly StockRoll[]> {
    const kept = await this.store.load();
    const known = new Set(kept.dwellings.map(({ id }) => id));
    const errors = dwellings.flatMap((id, i) => (known.has(id) ? [] : [{ code: 'unknown-dwelling', detail: `there is no dwelling ${id}`, pointer: `/dwellings/${i}` }]));
    if (errors.length > 0) throw new ProblemException(422, 'The request names a dwelling that is not there.', errors);
    const counted = files === undefined || files.length === 0 ? null : (await this.sent.read(files, 'rolls', kept)).rolls;
    const [newest] = await this.plans.headings();
    return filmOnShelf(kept, counted, newest === undefined ? null : (await this.plans.plan(newest.id)).body);
  }
}
