import type { Film, Known } from '#calc';
import { Check, Entity } from 'typeorm';
import { Day, Flag, Key, Real, Text, WholeCents, blank } from '../columns.js';
import { FromFile } from '../inventory-place.js';
import { keptWithPlace } from '../kept-kind.js';

/** A film as its sheet states it, on 3 mm clear glass. */
@Entity('films')
@Check('films_side', "side IN ('room', 'outdoor')")
@Check('films_basis', "basis IN ('measured', 'published', 'assumed')")
@Check('films_optics', 'solar_transmittance BETWEEN 0 AND 1 AND front_reflectance BETWEEN 0 AND 1 AND back_reflectance BETWEEN 0 AND 1')
export class FilmRow extends FromFile implements Omit<Film, 'inventoryRow'> {
  @Key() id: string;
  @Text() name: string;
  @Text(blank) filmClass: Known<string>;
  @Real() solarTransmittance: number;
  @Real() frontReflectance: number;
  @Real() backReflectance: number;
  @Real(blank) visibleTransmittance: Known<number>;
  @Real(blank) outsideVisibleReflectance: Known<number>;
  @Real(blank) insideVisibleReflectance: Known<number>;
  @Real(blank) roomEmissivity: Known<number>;
  @Text() side: Film['side'];
  @Real(blank) life_yr: Known<number>;
  @Flag(blank) mayRotate: Known<boolean>;
  @WholeCents(blank) freight_cents: Known<number>;
  @WholeCents(blank) minimumOrder_cents: Known<number>;
  @Real(blank) price_cents_m2: Known<number>;
  @Day(blank) quoteDate: Known<string>;
  @Day(blank) quoteEnds: Known<string>;
  @Text() basis: Film['basis'];
  @Text() source: string;
}

export const keptFilms = keptWithPlace<Film, FilmRow>(FilmRow);
