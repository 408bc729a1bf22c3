import { filmFault, sheetOf, type Film } from '#calc';
import { z } from 'zod';
import { readData } from './data-folder.js';

type Range = readonly [number, number];

/** An illustrative film of a class, with the range of the class around it. */
export interface CatalogueFilm extends Film {
  readonly synonyms: readonly string[];
  /** Seen across published sheets, on 3 mm clear single glass. */
  readonly classRanges: Readonly<Record<string, Range>>;
  readonly lifeRange_yr: Range;
}

/** Generic film classes; a user's own sheet always wins. */
export interface FilmCatalogue {
  /** @throws RangeError for a KEY the catalogue does not hold */
  readonly get: (key: string) => CatalogueFilm;
  readonly find: (key: string) => CatalogueFilm | null;
  readonly list: () => readonly CatalogueFilm[];
}

const share = z.number().min(0).max(1);
const range = z.tuple([z.number(), z.number()]);
const filmFile = z.strictObject({
  about: z.string(),
  units: z.record(z.string(), z.string()),
  films: z.array(
    z.strictObject({
      key: z.string(),
      name: z.string(),
      synonyms: z.array(z.string()),
      solarTransmittance: share,
      frontReflectance: share,
      backReflectance: share,
      roomEmissivity: share,
      visibleTransmittance: share,
      outsideVisibleReflectance: share,
      insideVisibleReflectance: share,
      side: z.enum(['room', 'outdoor']),
      life_yr: z.number().positive(),
      lifeRange_yr: range,
      mayRotate: z.boolean(),
      classRanges: z.record(z.string(), range),
      validFrom: z.iso.date(),
      source: z.string().min(1),
      basis: z.enum(['measured', 'published', 'assumed']),
    }),
  ),
});

const filmOf = ({ key, validFrom: _, ...row }: z.infer<typeof filmFile>['films'][number]): CatalogueFilm => ({
  ...row,
  id: key,
  filmClass: key,
  freight_cents: null,
  minimumOrder_cents: null,
  quoteDate: null,
  quoteEnds: null,
  inventoryRow: null,
});

/**
 * Opens the built-in film classes; every sheet is held against the physical limits.
 *
 * @param folder the data folder
 */
export function openFilms(folder: string): FilmCatalogue {
  const films = filmFile.parse(readData(folder, 'films/films.json')).films.map(filmOf);
  for (const film of films) {
    const fault = filmFault(sheetOf(film));
    if (fault !== null) throw new Error(`built-in film ${film.id}: ${fault.why}`);
  }
  const find = (key: string): CatalogueFilm | null => films.find((film) => film.id === key) ?? null;
  return {
    find,
    list: () => films,
    get: (key) => {
      const film = find(key);
      if (film === null) throw new RangeError(`film must be one of ${films.map((each) => each.id).join(', ')}, got ${key}`);
      return film;
    },
  };
}
