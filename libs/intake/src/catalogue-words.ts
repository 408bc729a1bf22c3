import { openCatalogue } from '#catalogue';
import { glazingWordsOf, type GlazingWords } from './cells/glazing-words.js';

let kept: GlazingWords | null = null;

/** Words of the built-in glazing types. */
export function catalogueWords(): GlazingWords {
  kept ??= glazingWordsOf(openCatalogue().glazing.list());
  return kept;
}
