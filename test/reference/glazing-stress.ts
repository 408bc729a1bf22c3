import type { PaneFacts, SuitabilityOutcome } from '#calc';
import type { ReferenceTable } from './reference-table.js';

/** Single panes in three weather cases; an estimate for screening. */
export const singlePaneStresses: ReferenceTable<{ readonly absorptance: number; readonly solar_W_m2: number; readonly outdoor_degC: number; readonly indoor_degC: number; readonly outdoorFilm_W_m2K: number; readonly indoorFilm_W_m2K: number; readonly edge_degC: number }, { readonly paneC: number; readonly dT: number; readonly stressMPa: number; readonly stressPsi: number }> = {
  of: 'calc/glass/pane-stress',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.01, why: 'printed to 0.001; psi to 1' },
  rows: [
    { given: { absorptance: 0.09, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3, edge_degC: 28.0 }, expect: { paneC: 32.142, dT: 4.142, stressMPa: 2.61, stressPsi: 378.0 }, place: 'case pane-clear3-summer; COMPUTED' },
    { given: { absorptance: 0.09, solar_W_m2: 900, outdoor_degC: -5, indoor_degC: 21, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 8.0, edge_degC: -5 }, expect: { paneC: 9.45, dT: 14.45, stressMPa: 9.104, stressPsi: 1320.0 }, place: 'case pane-clear3-cold-sunny-calm; COMPUTED' },
    { given: { absorptance: 0.46, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3, edge_degC: 28.0 }, expect: { paneC: 42.272, dT: 14.272, stressMPa: 8.991, stressPsi: 1304.0 }, place: 'case pane-bronze6-summer; COMPUTED' },
    { given: { absorptance: 0.46, solar_W_m2: 900, outdoor_degC: -5, indoor_degC: 21, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 8.0, edge_degC: -5 }, expect: { paneC: 26.1, dT: 31.1, stressMPa: 19.593, stressPsi: 2842.0 }, place: 'case pane-bronze6-cold-sunny-calm; COMPUTED' },
    { given: { absorptance: 0.46, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 40, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 4.0, edge_degC: 36.0 }, expect: { paneC: 56.511, dT: 20.511, stressMPa: 12.922, stressPsi: 1874.0 }, place: 'case pane-bronze6-heat-trap; COMPUTED' },
    { given: { absorptance: 0.38, solar_W_m2: 900, outdoor_degC: -5, indoor_degC: 21, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 8.0, edge_degC: -5 }, expect: { paneC: 22.5, dT: 27.5, stressMPa: 17.325, stressPsi: 2513.0 }, place: 'case pane-film38-cold-sunny-calm; COMPUTED' },
    { given: { absorptance: 0.38, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 40, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 4.0, edge_degC: 36.0 }, expect: { paneC: 52.596, dT: 16.596, stressMPa: 10.456, stressPsi: 1516.0 }, place: 'case pane-film38-heat-trap; COMPUTED' },
    { given: { absorptance: 0.55, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3, edge_degC: 28.0 }, expect: { paneC: 44.736, dT: 16.736, stressMPa: 10.544, stressPsi: 1529.0 }, place: 'case pane-film55-summer; COMPUTED' },
    { given: { absorptance: 0.55, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 40, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 4.0, edge_degC: 36.0 }, expect: { paneC: 60.916, dT: 24.916, stressMPa: 15.697, stressPsi: 2277.0 }, place: 'case pane-film55-heat-trap; COMPUTED' },
    { given: { absorptance: 0.7, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3, edge_degC: 28.0 }, expect: { paneC: 48.843, dT: 20.843, stressMPa: 13.131, stressPsi: 1904.0 }, place: 'case pane-bronze6-film-summer; COMPUTED' },
    { given: { absorptance: 0.7, solar_W_m2: 900, outdoor_degC: -5, indoor_degC: 21, outdoorFilm_W_m2K: 12, indoorFilm_W_m2K: 8.0, edge_degC: -5 }, expect: { paneC: 36.9, dT: 41.9, stressMPa: 26.397, stressPsi: 3829.0 }, place: 'case pane-bronze6-film-cold-sunny-calm; COMPUTED' },
  ],
};

/** Both panes of a double unit in summer. */
export const doublePaneTemperatures: ReferenceTable<{ readonly layerAbsorptance: readonly number[]; readonly gap_m2K_W: number; readonly solar_W_m2: number; readonly outdoor_degC: number; readonly indoor_degC: number; readonly outdoorFilm_W_m2K: number; readonly indoorFilm_W_m2K: number }, { readonly outerC: number; readonly innerC: number }> = {
  of: 'calc/glass/pane-stress',
  source: 'closed formula stated in the text, evaluated independently in double precision',
  seen: 'computed from the stated formula',
  tolerance: { abs: 0.01, why: 'printed to 0.001 °C' },
  rows: [
    { given: { layerAbsorptance: [0.097, 0.076], gap_m2K_W: 0.17, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3 }, expect: { outerC: 35.079, innerC: 32.791 }, place: 'case pane-double-bare; COMPUTED' },
    { given: { layerAbsorptance: [0.121, 0.326], gap_m2K_W: 0.17, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3 }, expect: { outerC: 39.29, innerC: 48.34 }, place: 'case pane-double-silver-medium-inner; COMPUTED' },
    { given: { layerAbsorptance: [0.106, 0.466], gap_m2K_W: 0.17, solar_W_m2: 783, outdoor_degC: 32, indoor_degC: 24, outdoorFilm_W_m2K: 20.3, indoorFilm_W_m2K: 8.3 }, expect: { outerC: 40.71, innerC: 56.658 }, place: 'case pane-double-dual-reflective-inner; COMPUTED' },
  ],
};

// The published words are read so: refer or consent = written-consent-needed, caution = ask-first, none found = no-listed-trigger.
/** Listed rules on the facts given, without the stress estimate. */
export const screenedPanes: ReferenceTable<{ readonly facts: Partial<PaneFacts> }, { readonly outcome: SuitabilityOutcome }> = {
  of: 'calc/glass/suitability',
  source: 'International Window Film Association, Guide to Avoiding Glass Failure (Summary of Major Guidelines; Exterior Shading Conditions; Examination Procedure); two film makers public film-to-glass caution lists (unnamed here)',
  seen: 'in the source',
  tolerance: { why: 'words, equal or not' },
  rows: [
    { given: { facts: { layers: 1, strength: 'annealed', tinted: false, combinedAbsorptance: 0.38 } }, expect: { outcome: 'no-listed-trigger' }, place: 'case screen-clear-thin; READ (rule): ask: no listed trigger found, still needs the glass maker / film maker film-to-glass advice' },
    { given: { facts: { layers: 1, strength: 'annealed', combinedAbsorptance: 0.52 } }, expect: { outcome: 'written-consent-needed' }, place: 'case screen-abs-50; READ (rule): do not install without film maker consent: combined absorptance at or above 0.50' },
    { given: { facts: { layers: 1, wired: true, combinedAbsorptance: 0.2 } }, expect: { outcome: 'written-consent-needed' }, place: 'case screen-wired; READ (rule): refer' },
    { given: { facts: { layers: 2, sealAge_yr: 10, sealTested: false, combinedAbsorptance: 0.35 } }, expect: { outcome: 'written-consent-needed' }, place: 'case screen-ig-10y; READ (rule): refer' },
    { given: { facts: { layers: 1, strength: 'annealed', tinted: true, shadow: 'narrow-perimeter', combinedAbsorptance: 0.35 } }, expect: { outcome: 'written-consent-needed' }, place: 'case screen-shadow-edge; READ (rule): refer' },
    { given: { facts: { layers: 1, strength: 'annealed', damaged: true, combinedAbsorptance: 0.1 } }, expect: { outcome: 'written-consent-needed' }, place: 'case screen-damaged-edge; READ (rule): refer' },
  ],
};
