export { openCatalogue, type Catalogue } from './catalogue.js';
export type { CatalogueFilm, FilmCatalogue } from './films.js';
export type { Basis, CatalogueGlazing, GlazingCatalogue, SourcedValue } from './glazing.js';
