import { ownDataFolder } from './data-folder.js';

/** The built-in data, checked on opening and read-only; each part is opened when first asked for. */
export interface Catalogue {
  readonly folder: string;
}

/**
 * Opens the built-in data.
 *
 * @param folder the data folder; the package's own by default
 */
export function openCatalogue(folder: string = ownDataFolder()): Catalogue {
  return { folder };
}
