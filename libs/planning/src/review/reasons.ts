import { wholeDollarsText } from '#calc';
import { sideWord } from '../dwelling/facade-sets.js';
import type { FilmOption } from '../options/option.js';
import { simplePayback } from '../options/value.js';

/** First-year saving net of added heating, all payers. */
export function firstYear_cents(option: FilmOption): number {
  const saving = option.segments[0]?.saving;
  return saving === undefined ? 0 : saving.cooling_cents - saving.addedHeating_cents;
}

/** Why an option stands where it stands, in one sentence of at most 160 characters: dwelling, side, glass, film, yearly dollars, cost, payback. */
export function reasonOf(option: FilmOption, glass: string): string {
  const sides = option.facades.map(sideWord).join(' and ');
  const payback = simplePayback(option.cost.total_cents, firstYear_cents(option));
  const pays = payback.years === null ? 'no payback' : `payback ${payback.years.toFixed(1)} years`;
  const sentence = (glassWords: string): string =>
    `${option.dwelling} ${sides}: ${glassWords}, film ${option.film} cuts cooling by ${wholeDollarsText(option.yearlyCooling_cents)} a year for ${wholeDollarsText(option.cost.total_cents)}, ${pays}.`;
  const full = sentence(glass);
  if (full.length <= 160) return full;
  const room = Math.max(8, glass.length - (full.length - 160) - 1);
  return sentence(glass.slice(0, room).trimEnd() + '…').slice(0, 160);
}
