import type { DataSource, EntityManager } from 'typeorm';
import { StoreCountRow } from './kept/store-count.js';

type Work<Result> = (rows: EntityManager) => Promise<Result>;

/**
 * Lets the work on the database go one by one.
 *
 * TypeORM has a single SQLite connection: two transactions at once refuse each other, and a write outside a transaction
 * is lost when somebody else's rolls back. So every write waits its turn here, and so does every read on SQLite,
 * which would otherwise see rows that are not kept in the end. PostgreSQL reads have a snapshot of their own.
 */
export class Turns {
  #last: Promise<unknown> = Promise.resolve();

  constructor(private readonly database: DataSource) {}

  /** Runs the work in one transaction: all of it is kept or nothing. The work must use the rows it is given and nothing else. */
  write<Result>(work: Work<Result>): Promise<Result> {
    return this.#inTurn(() =>
      this.database.transaction(async (rows) => {
        await rows.increment(StoreCountRow, { line: 1 }, 'writes', 1);
        return work(rows);
      }),
    );
  }

  /** Runs the work on one consistent state of the database. */
  read<Result>(work: Work<Result>): Promise<Result> {
    if (this.database.options.type === 'postgres') return this.database.transaction('REPEATABLE READ', work);
    return this.#inTurn(() => this.database.transaction(work));
  }

  /** Waits until everything that was asked for is done. */
  async idle(): Promise<void> {
    await this.#last;
  }

  #inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const turn = this.#last.then(work);
    // The next turn comes whether this one was kept or not; its own caller is told of the failure by `turn`.
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}
