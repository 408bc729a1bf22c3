import { type GlazingMakeUp, labelledGlazing, type Window } from '#calc';
import type { Catalogue } from '#catalogue';
import type { DefaultOf } from '../job/assumption-book.js';

/** A glazing type of the portfolio: from the catalogue, from a label, or not known and planned carefully. */
export interface BookedGlazing {
  readonly key: string;
  readonly name: string;
  readonly makeUp: GlazingMakeUp;
  readonly tinted: boolean | null;
  readonly lowE: boolean | null;
  /** The survey says neither type nor label. */
  readonly unknown: boolean;
  readonly note: string | null;
}

export type GlazingBook = ReadonlyMap<string, BookedGlazing>;

/** Key of a window's glazing: the type, or the label, or unknown. */
export function glazingKeyOf(window: Pick<Window, 'glazing' | 'labelSolarHeatGain' | 'labelUFactor_W_m2K' | 'frameShare'>): string {
  if (window.glazing !== null && window.labelSolarHeatGain === null) return window.glazing;
  if (window.labelSolarHeatGain !== null && window.labelUFactor_W_m2K !== null) {
    return `label SHGC ${String(window.labelSolarHeatGain)} U ${window.labelUFactor_W_m2K.toFixed(2)} W/m²K${window.frameShare === null ? '' : ` frame ${String(window.frameShare)}`}`;
  }
  return window.glazing ?? 'not known';
}

function booked(window: Window, key: string, of: { readonly catalogue: Catalogue; readonly defaultOf: DefaultOf }): BookedGlazing {
  const listed = window.glazing === null ? null : of.catalogue.glazing.find(window.glazing);
  if (window.labelSolarHeatGain !== null && window.labelUFactor_W_m2K !== null) {
    const made = labelledGlazing({ solarHeatGain: window.labelSolarHeatGain, uFactor_W_m2K: window.labelUFactor_W_m2K, ...(window.frameShare === null ? {} : { frameShare: window.frameShare }) });
    return { key, name: listed?.name ?? made.assumed.family, makeUp: { ...made, key }, tinted: listed?.tinted ?? null, lowE: listed?.lowE ?? made.assumed.family.includes('low-e'), unknown: false, note: made.assumed.sentence };
  }
  if (listed !== null) return { key, name: listed.name, makeUp: listed.makeUp, tinted: listed.tinted, lowE: listed.lowE, unknown: false, note: null };
  const careful = of.catalogue.glazing.get(of.defaultOf<string>('unknownGlazing').value);
  return { key, name: 'glass not known', makeUp: { ...careful.makeUp, key }, tinted: null, lowE: null, unknown: true, note: `glass not known: computed as ${careful.name}, test before ordering` };
}

/** Every glazing type that occurs, once. */
export function glazingBook(windows: readonly Window[], of: { readonly catalogue: Catalogue; readonly defaultOf: DefaultOf }): GlazingBook {
  const book = new Map<string, BookedGlazing>();
  for (const window of windows) {
    const key = glazingKeyOf(window);
    if (!book.has(key)) book.set(key, booked(window, key, of));
  }
  return book;
}
