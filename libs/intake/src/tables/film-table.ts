import type { Film, Roll } from '#calc';
import { dateCell } from '../cells/date-cell.js';
import { lengthCell, lengthCell_mm } from '../cells/length-cell.js';
import { areaPriceCell, moneyCell } from '../cells/money-cell.js';
import { numberCell, shareCell } from '../cells/number-cell.js';
import { idCell, textCell, wordCell, yesNoCell } from '../cells/word-cell.js';
import { needed, optional, type Said } from '../columns/column.js';
import { defineTable, noted, wrong } from '../columns/table.js';

const share = (name: string, said: Said) => optional(name, { ...said, quantity: 'share', read: shareCell });
const figure = (name: string, said: Said) => needed(name, { ...said, quantity: 'share', read: shareCell });

export const filmTable = defineTable({
  name: 'films',
  about: 'One row per film, with the figures of its sheet: film on 3 mm clear glass.',
  columns: {
    film: needed('film', { also: ['film id', 'film code'], about: 'short code', example: 'B', read: idCell }),
    name: optional('film_name', { also: ['name'], about: 'name people use', example: 'Reflective B', read: textCell }),
    filmClass: optional('film_class', { also: ['class'], about: 'kind of film', example: 'reflective medium', read: textCell }),
    solarTransmittance: figure('solar_transmittance', { also: ['tsol', 'solar t'], about: 'solar transmittance, 0…1', example: '0.24' }),
    frontReflectance: figure('solar_reflectance_outside', { also: ['front reflectance', 'rsol front'], about: 'solar reflectance seen from outdoors, 0…1', example: '0.38' }),
    backReflectance: figure('solar_reflectance_inside', { also: ['back reflectance', 'rsol back'], about: 'solar reflectance seen from the room, 0…1', example: '0.36' }),
    visibleTransmittance: share('visible_transmittance', { also: ['vt', 'vlt', 'tvis'], about: 'visible transmittance (VT), 0…1', example: '0.30' }),
    outsideVisibleReflectance: share('visible_reflectance_outside', { also: ['vlr outside', 'vlr'], about: 'visible reflectance outside, 0…1', example: '0.32' }),
    insideVisibleReflectance: share('visible_reflectance_inside', { also: ['vlr inside'], about: 'visible reflectance inside, 0…1', example: '0.28' }),
    roomEmissivity: share('room_emissivity', { also: ['emissivity', 'emittance'], about: 'emissivity of the room side, 0…1', example: '0.75' }),
    side: optional('side', { also: ['film side'], about: 'room or outdoor', example: 'room', read: wordCell({ room: ['inside', 'interior', 'indoor'], outdoor: ['outside', 'exterior'] }) }),
    life_yr: optional('life_yr', { also: ['life', 'life years'], about: 'years the film lasts', example: '12', read: numberCell({ min: 1, max: 40 }) }),
    mayRotate: optional('may_rotate', { also: ['rotate', 'may be turned'], about: 'yes when pieces may lie across the roll', example: 'no', read: yesNoCell }),
    freight_cents: optional('freight', { about: 'freight of an order, in money', example: '45', read: moneyCell() }),
    minimumOrder_cents: optional('minimum_order', { also: ['min order'], about: 'smallest order, in money', example: '0', read: moneyCell() }),
    price_cents_m2: optional('film_price', { also: ['price by area', 'area price'], unit: 'per_ft2', quantity: 'areaPrice', about: 'price of film by its area, where it is sold by length; rolls on offer win', example: '2.00', read: areaPriceCell }),
    quoteDate: optional('quote_date', { also: ['quoted'], about: 'day of the quote', example: '2026-05-01', read: dateCell }),
    quoteEnds: optional('quote_ends', { also: ['quote expiry', 'quote valid until'], about: 'last day of the quote', example: '2026-12-31', read: dateCell }),
    basis: optional('basis', { about: 'how far the figures are to be trusted', example: 'published', read: wordCell({ measured: [], published: ['data sheet', 'sheet'], assumed: ['guess'] }) }),
    source: optional('source', { also: ['figures from'], about: 'where the figures are from', example: 'film sheet', read: textCell }),
  },
  records: (of, inventoryRow, say): readonly Film[] => {
    const [t, rf, rb] = [of.solarTransmittance ?? 0, of.frontReflectance ?? 0, of.backReflectance ?? 0];
    if (t + rf > 1 || t + rb > 1) {
      say('solarTransmittance', wrong('film-impossible', 'transmittance and reflectance that sum to at most 1 on both sides', 'check the film sheet'));
    }
    if (of.side === null) say('side', noted('film-side-assumed', 'room or outdoor', 'taken as a film for the room side'));
    if (of.basis === null) say('basis', noted('basis-assumed', 'measured, published or assumed', 'taken as assumed'));
    const { film, ...rest } = of;
    return [{
      ...rest, id: film ?? '', name: of.name ?? film ?? '', solarTransmittance: t, frontReflectance: rf, backReflectance: rb,
      side: of.side ?? 'room', basis: of.basis ?? 'assumed', source: of.source ?? 'not stated', inventoryRow,
    }];
  },
});

export const rollTable = defineTable({
  name: 'rolls',
  about: 'One row per roll on offer (price) or in stock (a lot with a length left).',
  columns: {
    roll: optional('roll', { also: ['roll id'], about: 'short code; blank: made from film, width and lot', example: 'B-48', read: idCell }),
    film: needed('film', { also: ['film id', 'film code'], about: 'film on the roll', example: 'B', read: idCell }),
    width: needed('width', { also: ['roll width'], unit: 'in', quantity: 'length', about: 'width of the roll', example: '48', read: lengthCell({ min_mm: 200, max_mm: 3000 }) }),
    length_mm: needed('length', { also: ['roll length', 'length left'], unit: 'ft', quantity: 'length', about: 'length on the roll', example: '100', read: lengthCell_mm({ min_mm: 100, max_mm: 500_000 }) }),
    price_cents: optional('price', { also: ['roll price', 'price per roll', 'cost'], about: 'price of a whole roll, in money', example: '440', read: moneyCell() }),
    inStock: optional('in_stock', { also: ['stock', 'rolls in stock'], about: 'rolls of this kind in the store room; blank is a roll on offer only', example: '0', read: numberCell({ min: 0, max: 10_000, whole: true }) }),
    lot: optional('lot', { also: ['lot no', 'batch'], about: 'lot number', example: '', read: textCell }),
  },
  records: (of, inventoryRow, say): readonly Roll[] => {
    if (of.width === null) return [];
    if (of.price_cents === null && (of.inStock ?? 0) === 0) say('price_cents', wrong('missing-value', 'a price, or rolls in stock', 'a roll that is neither priced nor in stock cannot be used'));
    const id = of.roll ?? [of.film, of.width.entered, of.lot].filter((part) => part !== null).join(' ');
    return [{ id, film: of.film ?? '', width: of.width, length_mm: of.length_mm ?? 0, price_cents: of.price_cents, inStock: of.inStock ?? 0, lot: of.lot, inventoryRow }];
  },
});
