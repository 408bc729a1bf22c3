import type { LedgerEntry } from '#calc';
import { dateCell } from '../cells/date-cell.js';
import { moneyCell } from '../cells/money-cell.js';
import { idCell, textCell, wordCell } from '../cells/word-cell.js';
import { needed, optional } from '../columns/column.js';
import { defineTable, doubtful, wrong } from '../columns/table.js';

export const ledgerTable = defineTable({
  name: 'ledger',
  about: 'One row per quote, commitment, invoice, payment or stock on hand, by owner entity and fiscal year. What an invoice or a payment settles is counted once.',
  columns: {
    entry: needed('entry', { also: ['entry id', 'document', 'reference', 'order no', 'invoice no'], about: 'number of the order, invoice or payment', example: 'PO-114', read: idCell }),
    ownerEntity: optional('owner_entity', { also: ['owner', 'entity'], about: 'whose cap it is', example: 'OWNER1', read: idCell }),
    phase: needed('phase', { also: ['fiscal year', 'year'], about: 'fiscal year: its name, or owner entity/name', example: '2026-27', read: textCell }),
    kind: needed('kind', { also: ['state', 'type'], about: 'how far the money is', example: 'committed', read: wordCell({ quote: ['quoted', 'offer'], committed: ['ordered', 'order', 'commitment'], invoiced: ['invoice'], paid: ['payment'], stock: ['on hand', 'in store'] }) }),
    day: needed('day', { also: ['date', 'on'], about: 'day of the document', example: '2026-07-20', read: dateCell }),
    expires: optional('expires', { also: ['valid until', 'expiry', 'quote ends'], about: 'last day a quote holds', example: '2026-09-30', read: dateCell }),
    amount_cents: needed('amount', { also: ['cost', 'value', 'sum'], about: 'money, tax in it; a credit is below zero. What it says of freight below is in it', example: '3100', read: moneyCell({ min_cents: -1e12 }) }),
    freight_cents: optional('freight', { about: 'freight inside the amount', example: '45', read: moneyCell() }),
    minimumOrder_cents: optional('minimum_order', { also: ['min order'], about: 'smallest order a quote is good for, in money', example: '250', read: moneyCell() }),
    film: optional('film', { also: ['film id'], about: 'film it buys', example: 'B', read: idCell }),
    settles: optional('settles', { also: ['for', 'against', 'order'], about: 'entry this one invoices or pays', example: '', read: idCell }),
    note: optional('note', { also: ['remark', 'comment'], about: 'anything else', example: '', read: textCell }),
  },
  records: (of, inventoryRow, say): readonly LedgerEntry[] => {
    const named = of.phase ?? '';
    const slash = named.indexOf('/');
    const owner = slash > 0 ? named.slice(0, slash) : of.ownerEntity;
    if (owner === null || (of.ownerEntity !== null && owner !== of.ownerEntity)) {
      say('ownerEntity', wrong('ledger-owner', 'one owner entity, here or before the name of the phase', 'name whose cap it is'));
      return [];
    }
    const [day, kind] = [of.day ?? '', of.kind ?? 'quote'];
    if (of.expires !== null && of.expires < day) {
      say('expires', wrong('date-before', 'a last day on or after the day of the quote', 'correct one of the two dates'));
      return [];
    }
    if (kind === 'quote' && of.expires === null) say('expires', doubtful('quote-without-end', 'the last day the quote holds', 'ask for it; until then it is taken to hold'));
    return [{
      id: of.entry ?? '', ownerEntity: owner, phase: slash > 0 ? named : `${owner}/${named}`, kind, day, expires: of.expires, amount_cents: of.amount_cents ?? 0,
      freight_cents: of.freight_cents, minimumOrder_cents: of.minimumOrder_cents, film: of.film, settles: of.settles, note: of.note, inventoryRow,
    }];
  },
});
