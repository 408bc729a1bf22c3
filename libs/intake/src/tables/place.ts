import { idCell } from '../cells/word-cell.js';
import { optional } from '../columns/column.js';

export const DWELLING_HEADERS = ['dwelling id', 'unit', 'unit no', 'apartment', 'apt', 'apt no', 'suite', 'door', 'home', 'flat'] as const;
export const WINDOW_HEADERS = ['window', 'window id', 'opening', 'window mark', 'opening mark'] as const;

/** The pair of columns that names a dwelling wherever one is meant. */
export const dwellingPlace = {
  building: optional('building', { also: ['building id', 'building code', 'bldg', 'property', 'site', 'block'], about: 'code of the building', example: 'EC', read: idCell }),
  dwelling: optional('dwelling', { also: DWELLING_HEADERS, about: 'number of the dwelling as on its door, or building/dwelling', example: '007', read: idCell }),
} as const;

/** Building and whole id of a dwelling: "EC" + "007", or "EC/007" in one cell; null when the building is not named. */
export function dwellingId(building: string | null, dwelling: string | null): { readonly building: string; readonly id: string } | null {
  if (dwelling === null) return null;
  const slash = dwelling.indexOf('/');
  if (slash > 0 && (building === null || dwelling.slice(0, slash) === building)) return { building: dwelling.slice(0, slash), id: dwelling };
  return building === null ? null : { building, id: `${building}/${dwelling}` };
}
