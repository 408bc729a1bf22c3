export { openCatalogue, type Catalogue } from './catalogue.js';
export type { PlantCatalogue, SourcedFigure } from './cooling.js';
export type { CatalogueFilm, FilmCatalogue } from './films.js';
export type { Basis, CatalogueGlazing, GlazingCatalogue, SourcedValue } from './glazing.js';
export type { Assumption } from './assumption.js';
export { splitEfficiencyKey, type AssumptionCatalogue, type AssumptionKey, type AssumptionValue } from './assumptions.js';
export type { SourcedTimeModel } from './labour.js';
export type { Climate, ClimateCatalogue, ClimateExtremes } from './climates.js';
export type { NearestClimate } from './nearest-climate.js';
