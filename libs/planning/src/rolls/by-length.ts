import { type Film, inchesText, type Roll, ticksOf_mm } from '#calc';

/** What film without a roll on offer is cut from and paid by. */
export interface LengthTerms {
  /** Price of a square metre where the film has none of its own. */
  readonly price_cents_m2: number;
  /** Width it is cut from; a building that takes none so wide has it narrower. */
  readonly width_mm: number;
}

/** Price of a film by area: its own, or the assumed one. */
export const areaPriceOf = (film: Film, of: Pick<LengthTerms, 'price_cents_m2'>): number => film.price_cents_m2 ?? of.price_cents_m2;

const isOffered = (rolls: readonly Roll[], film: string): boolean => rolls.some((r) => r.film === film && r.price_cents !== null);

/** The rolls, and for each film that none of them offers a width sold by length: it is paid for by what runs off, whole rolls are not bought. */
export function withLengths(rolls: readonly Roll[], films: readonly Film[], of: LengthTerms): Roll[] {
  const byLength = films.filter((film) => !isOffered(rolls, film.id)).map((film): Roll => ({
    id: `${film.id} by length`,
    film: film.id,
    width: { entered: inchesText(ticksOf_mm(of.width_mm)), mm: of.width_mm },
    length_mm: 0,
    isByLength: true,
    price_cents: (areaPriceOf(film, of) * of.width_mm) / 1000,
    inStock: 0,
    lot: null,
    inventoryRow: film.inventoryRow ?? { file: 'films.csv', row: 1 },
  }));
  return [...rolls, ...byLength];
}
