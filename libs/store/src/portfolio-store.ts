import type { PlanSettings, Portfolio } from '#calc';
import type { DataSource, EntityManager } from 'typeorm';
import { allKept, listNames } from './all-kept.js';
import { markImport, undoImport, type UndoCounts } from './import-undo.js';
import { importsOf, keepImport, standingFindings, type FileWithFindings, type ImportFinding, type ImportNote } from './import-log.js';
import { jobById, keepJob, listJobs, type Job } from './job-list.js';
import type { ListName } from './kept-kind.js';
import { SettingsRow, keptSettings } from './kept/settings.js';
import { StoreCountRow } from './kept/store-count.js';
import { keepPlan, listPlans, planById, signPlan, type KeptPlan, type PlanHeading, type PlanToKeep } from './plan-shelf.js';
import { addCounts, noWrites, putRecords, putRows, sameText, type WriteCounts } from './record-write.js';
import { StoreFault } from './store-fault.js';
import { Turns } from './turns.js';

/** Records to create or to write over those with the same id; a list or record that is not named stays as it is. */
export type PortfolioChanges = { readonly [Part in keyof Portfolio]?: Portfolio[Part] };

/** How much is kept, list by list, and a number that grows with every change of the portfolio. */
export interface StoreContents {
  readonly settings: PlanSettings | null;
  readonly counts: Readonly<Record<ListName, number>>;
  readonly portfolioRevision: number;
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

async function settingsOf(rows: EntityManager): Promise<PlanSettings | null> {
  const row = await rows.findOneBy(SettingsRow, { line: 1 });
  return row === null ? null : keptSettings.toRecord(row);
}

async function putSettings(rows: EntityManager, settings: PlanSettings): Promise<WriteCounts> {
  const kept = await settingsOf(rows);
  if (kept !== null && sameText(kept) === sameText(settings)) return { ...noWrites, unchanged: 1 };
  await putRows(rows, SettingsRow, [keptSettings.toRow(settings)]);
  return kept === null ? { ...noWrites, created: 1 } : { ...noWrites, updated: 1 };
}

/** Records of a list in the order of their ids; the order of the rows of a file plays no part. */
async function recordsOf<List extends ListName>(rows: EntityManager, list: List): Promise<Portfolio[List]> {
  const { entity, toRecord } = allKept[list];
  const keys = rows.connection.getMetadata(entity).primaryColumns.map((column) => column.propertyName);
  const keyOf = (row: Record<string, unknown>): string => keys.map((key) => String(row[key])).join('\u0000');
  const found = (await rows.find(entity)).map((row) => ({ key: keyOf(row), record: toRecord(row) }));
  return found.sort((a, b) => byText(a.key, b.key)).map(({ record }) => record) as unknown as Portfolio[List];
}

/** Everything that is kept, behind one door. Every write is one transaction in one queue. */
export class PortfolioStore {
  readonly #turns: Turns;

  constructor(private readonly database: DataSource) {
    this.#turns = new Turns(database);
  }

  /** The whole portfolio; lists sorted by id. @throws StoreFault when nothing has been imported yet */
  async load(): Promise<Portfolio> {
    const found = await this.find();
    if (found === null) throw new StoreFault('The database holds no portfolio yet; import one first.');
    return found;
  }

  /** The whole portfolio, or null when nothing has been imported yet. */
  find(): Promise<Portfolio | null> {
    return this.#turns.read(async (rows) => {
      const settings = await settingsOf(rows);
      if (settings === null) return null;
      const lists: Partial<Record<ListName, unknown>> = {};
      for (const list of listNames) lists[list] = await recordsOf(rows, list);
      return { settings, ...lists } as Portfolio;
    });
  }

  /** How much is kept, without reading it all. */
  contents(): Promise<StoreContents> {
    return this.#turns.read(async (rows) => {
      const counts: Partial<Record<ListName, number>> = {};
      for (const list of listNames) counts[list] = await rows.count(allKept[list].entity);
      const { portfolioRevision } = await rows.findOneByOrFail(StoreCountRow, { line: 1 });
      return { settings: await settingsOf(rows), counts: counts as Record<ListName, number>, portfolioRevision };
    });
  }

  /**
   * Creates and updates records, all or none, and notes the files they came from.
   *
   * @throws StoreFault when a record names something that is neither kept nor among the changes
   */
  write(changes: PortfolioChanges, files: readonly FileWithFindings[] = []): Promise<WriteCounts> {
    return this.#turns.write(async (rows) => {
      let counts = changes.settings === undefined ? noWrites : await putSettings(rows, changes.settings);
      await markImport(rows, changes.siteRecords ?? [], files);
      for (const list of listNames) counts = addCounts(counts, await this.#put(rows, list, changes));
      if (counts.created + counts.updated > 0) await rows.increment(StoreCountRow, { line: 1 }, 'portfolioRevision', 1);
      for (const file of files) await keepImport(rows, file);
      return counts;
    });
  }

  /** What was found in the files as they were last taken in. */
  findings(): Promise<readonly ImportFinding[]> {
    return this.#turns.read(standingFindings);
  }

  /** The files taken in, newest first. */
  imports(): Promise<readonly ImportNote[]> {
    return this.#turns.read(importsOf);
  }

  /** Takes back what an import did to site records. @throws StoreFault when there is nothing to undo */
  undoImport(id: string): Promise<UndoCounts> {
    return this.#turns.write(async (rows) => {
      const counts = await undoImport(rows, id);
      await rows.increment(StoreCountRow, { line: 1 }, 'portfolioRevision', 1);
      return counts;
    });
  }

  /** Signs a kept plan: from then on it stands as the plan of record. @throws StoreFault when it is not kept or signed already */
  signPlan(id: string): Promise<void> {
    return this.#turns.write((rows) => signPlan(rows, id));
  }

  /** Keeps a plan for good. @throws StoreFault when the id is taken by another plan or the parent is not kept */
  savePlan(plan: PlanToKeep): Promise<KeptPlan> {
    return this.#turns.write((rows) => keepPlan(rows, plan));
  }

  /** A kept plan, or null. @throws StoreFault when its text no longer fits its hash */
  loadPlan(id: string): Promise<KeptPlan | null> {
    return this.#turns.read((rows) => planById(rows, id));
  }

  /** The kept plans without their bodies, newest first. */
  plans(): Promise<readonly PlanHeading[]> {
    return this.#turns.read(listPlans);
  }

  /** Keeps a job as it is now. */
  saveJob(job: Job): Promise<void> {
    return this.#turns.write((rows) => keepJob(rows, job));
  }

  /** A job, or null. */
  loadJob(id: string): Promise<Job | null> {
    return this.#turns.read((rows) => jobById(rows, id));
  }

  /** All jobs, newest first. */
  jobs(): Promise<readonly Job[]> {
    return this.#turns.read(listJobs);
  }

  /** Waits for the work under way and closes the database. */
  async close(): Promise<void> {
    await this.#turns.idle();
    if (this.database.isInitialized) await this.database.destroy();
  }

  /** Nest calls this when the application ends. */
  onModuleDestroy(): Promise<void> {
    return this.close();
  }

  async #put(rows: EntityManager, list: ListName, changes: PortfolioChanges): Promise<WriteCounts> {
    try {
      return await putRecords(rows, list, (changes[list] ?? []) as Portfolio[ListName][number][] as never);
    } catch (fault) {
      throw refusal(fault, list);
    }
  }
}

/** The database's refusal of a list in words, or the fault as it came. */
function refusal(fault: unknown, list: ListName): unknown {
  const said = fault instanceof Error ? fault.message : '';
  if (/foreign key/i.test(said)) {
    return new StoreFault(`One of the ${list} names a building, dwelling, plan type or meter that is not there; nothing was written.`, { cause: fault });
  }
  const check = /check constraint\W+(?:failed: )?(?:"?)(\w+)/i.exec(said)?.[1];
  if (check !== undefined) return new StoreFault(`One of the ${list} breaks the rule "${check}"; nothing was written.`, { cause: fault });
  return fault;
}
