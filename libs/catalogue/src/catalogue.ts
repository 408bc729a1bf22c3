import type { SuitabilityRule } from '#calc';
import { openClimates, type ClimateCatalogue } from './climates.js';
import { openAssumptions, type AssumptionCatalogue } from './assumptions.js';
import { openCooling, type PlantCatalogue } from './cooling.js';
import { ownDataFolder } from './data-folder.js';
import { openFilms, type FilmCatalogue } from './films.js';
import { openGlazing, type GlazingCatalogue } from './glazing.js';
import { openTimeModel, type SourcedTimeModel } from './labour.js';
import { openSuitabilityRules } from './suitability.js';
import { openUncertainInputs, type UncertainInput } from './uncertain-inputs.js';

/** The built-in data, checked on opening and read-only; each part is opened when first asked for. */
export interface Catalogue {
  readonly folder: string;
  readonly climates: ClimateCatalogue;
  readonly glazing: GlazingCatalogue;
  readonly films: FilmCatalogue;
  readonly suitabilityRules: readonly SuitabilityRule[];
  readonly plants: PlantCatalogue;
  readonly timeModel: SourcedTimeModel;
  readonly assumptions: AssumptionCatalogue;
  readonly uncertainInputs: readonly UncertainInput[];
}

/** Opens a part when it is first asked for, and keeps it. */
function once<Part>(open: () => Part): () => Part {
  let kept: Part | null = null;
  return () => (kept ??= open());
}

/**
 * Opens the built-in data.
 *
 * @param folder the data folder; the package's own by default
 */
export function openCatalogue(folder: string = ownDataFolder()): Catalogue {
  const climates = once(() => openClimates(folder));
  const glazing = once(() => openGlazing(folder));
  const films = once(() => openFilms(folder));
  const rules = once(() => openSuitabilityRules(folder));
  const plants = once(() => openCooling(folder));
  const timeModel = once(() => openTimeModel(folder));
  const assumptions = once(() => openAssumptions(folder));
  const uncertain = once(() => openUncertainInputs(folder));
  return {
    folder,
    get climates() {
      return climates();
    },
    get glazing() {
      return glazing();
    },
    get films() {
      return films();
    },
    get suitabilityRules() {
      return rules();
    },
    get plants() {
      return plants();
    },
    get timeModel() {
      return timeModel();
    },
    get assumptions() {
      return assumptions();
    },
    get uncertainInputs() {
      return uncertain();
    },
  };
}
