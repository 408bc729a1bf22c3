import type { InventoryRow, Known } from '#calc';
import { dateCell } from '../cells/date-cell.js';
import { moneyCell } from '../cells/money-cell.js';
import { quantityCell } from '../cells/quantity-cell.js';
import { idCell, wordCell } from '../cells/word-cell.js';
import { needed, optional } from '../columns/column.js';
import { defineTable, wrong } from '../columns/table.js';

/** A bill as its row says it: whose it is and where it ends may be left to the rows beside it. */
export interface BillLine {
  readonly meter: Known<string>;
  readonly firstDay: string;
  /** Last day of use, included; null where the next reading says it. */
  readonly lastDay: Known<string>;
  /** Null in the row that only closes the one before. */
  readonly use_kWh: Known<number>;
  readonly peak_kW: Known<number>;
  readonly amount_cents: Known<number>;
  readonly estimated: boolean;
  readonly inventoryRow: InventoryRow;
}

const DAY_MS = 86_400_000;
/** An ISO day some days later. */
export const dayAfter = (day: string, by = 1): string => new Date(Date.parse(`${day}T00:00:00Z`) + by * DAY_MS).toISOString().slice(0, 10);

export const billTable = defineTable({
  name: 'bills',
  about: 'One row per bill or reading period of a meter. A row that ends where nobody says runs to the day before the next row of its meter.',
  columns: {
    meter: optional('meter', { also: ['meter id', 'meter no', 'meter number', 'account'], about: 'id of the meter in meters.csv; may be left out when --meter names it', example: 'EC-M1', read: idCell }),
    firstDay: needed('first_day', { also: ['start', 'start date', 'from', 'period start', 'service from', 'bill start'], about: 'first day of the use', example: '2026-01-14', read: dateCell }),
    lastDay: optional('last_day', { also: ['end', 'end date', 'to', 'period end', 'service to', 'bill end'], about: 'last day of the use, included', example: '2026-02-12', read: dateCell }),
    nextReading: optional('next_reading', { also: ['next read', 'next start', 'read date', 'reading date'], about: 'day of the reading that ends it, which belongs to the next bill; in place of last_day', example: '2026-02-13', read: dateCell }),
    use_kWh: optional('use', { also: ['usage', 'consumption', 'electricity', 'energy', 'kwh used', 'kwh', 'value'], unit: 'kWh', quantity: 'energy', about: 'electricity used; below zero is kept and said', example: '812', read: quantityCell('energy', {}) }),
    peak_kW: optional('peak', { also: ['demand', 'peak demand', 'billed demand'], unit: 'kW', quantity: 'demand', about: 'greatest demand of the period', example: '6.4', read: quantityCell('demand', { min: 0 }) }),
    amount_cents: optional('amount', { also: ['bill amount', 'charge', 'total', 'total charge', 'cost'], about: 'what was billed, in money; a credit is below zero', example: '154.36', read: moneyCell({ min_cents: -1e12 }) }),
    estimated: optional('estimated', { also: ['estimate', 'read type', 'reading type', 'kind of reading'], about: 'yes when nobody read the meter', example: 'no', read: wordCell({ yes: ['y', 'true', '1', 'x', 'e', 'est', 'estimate', 'estimated'], no: ['n', 'false', '0', 'a', 'act', 'actual', 'read', 'measured'] }) }),
  },
  records: (of, inventoryRow, say): readonly BillLine[] => {
    const firstDay = of.firstDay ?? '';
    const closed = of.lastDay ?? (of.nextReading === null ? null : dayAfter(of.nextReading, -1));
    if (closed !== null && closed < firstDay) {
      say(of.lastDay === null ? 'nextReading' : 'lastDay', wrong('date-before', 'an end on or after the first day', 'correct one of the two dates'));
      return [];
    }
    if (of.use_kWh === null && (closed !== null || of.amount_cents !== null)) {
      say('use_kWh', wrong('missing-value', 'the electricity used', 'fill in the use; without it the row says nothing of the meter'));
      return [];
    }
    return [{ meter: of.meter, firstDay, lastDay: closed, use_kWh: of.use_kWh, peak_kW: of.peak_kW, amount_cents: of.amount_cents, estimated: of.estimated === 'yes', inventoryRow }];
  },
});
