import { Check, Entity } from 'typeorm';
import { LineKey, Whole } from '../columns.js';

/**
 * One line that counts writes. The first statement of every write touches it, which takes SQLite's write lock at once
 * (waiting for another process) instead of in the middle of the work, where waiting is not possible.
 */
@Entity('store_count')
@Check('store_count_one_line', 'line = 1')
export class StoreCountRow {
  @LineKey() line: number;
  @Whole() writes: number;
  @Whole() portfolioRevision: number;
}
