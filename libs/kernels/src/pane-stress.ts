import {
  COLD_CALM_MORNING,
  combinedAbsorptance,
  HEAT_TRAP,
  NOTHING_KNOWN,
  paneHeat,
  paneStress,
  SUMMER_AFTERNOON,
  suitability,
  type FilmOnClear,
  type PaneFacts,
  type PaneHeat,
  type PaneStress,
  type PaneWeather,
} from '#calc';
import { z } from 'zod';
import { filmInput, glazingFields, readFilm, readGlazing, type ReadGlazing } from './glass-input.js';
import { defineKernel, InputFault } from './kernel.js';

const share = z.number().min(0).max(1);
const seen = z.boolean().optional();
const input = z.strictObject({
  ...glazingFields,
  film: filmInput.optional(),
  layerAbsorptance: z.array(share).min(1).optional().describe('instead of a glazing: share of the sun each pane takes up, outdoors first'),
  width_mm: z.number().positive().optional(),
  height_mm: z.number().positive().optional(),
  frame: z.enum(['gasketed', 'metal-without-gasket', 'concrete', 'dark']).optional(),
  shadow: z.enum(['none', 'narrow-perimeter', 'angular', 'straight']).optional(),
  strength: z.enum(['annealed', 'heat-strengthened', 'tempered']).optional().describe('planned as annealed when absent'),
  temperedMarkSeen: seen,
  tinted: seen,
  lowE: seen,
  sealAge_yr: z.number().min(0).optional(),
  sealTested: seen,
  fogged: seen,
  damaged: seen,
  unexplainedBreakage: seen,
  wired: seen,
  laminated: seen,
  patterned: seen,
  bent: seen,
  skylight: seen,
  fireRated: seen,
  heated: seen,
  plastic: seen,
  lettered: seen,
  escape: seen,
  sealantHard: seen,
  deepRecess: seen,
  heatTrap: seen,
  airOnGlass: seen,
  warrantyInForce: seen,
  existingFilm: z.enum(['none', 'present']).optional(),
  weatherCase: z
    .union([
      z.enum(['summer', 'cold-sunny-calm', 'heat-trap', 'all', 'none']),
      z.strictObject({
        name: z.string().default('as given'),
        solar_W_m2: z.number().min(0),
        outdoor_degC: z.number(),
        indoor_degC: z.number(),
        outdoorFilm_W_m2K: z.number().positive(),
        indoorFilm_W_m2K: z.number().positive(),
        edge_degC: z.number().optional().describe('half way between outdoors and room when absent'),
      }),
    ])
    .default('all')
    .describe('the worst of the three named cases when absent; none judges by the listed rules alone'),
});

type Given = z.infer<typeof input>;

const NAMED: readonly PaneWeather[] = [SUMMER_AFTERNOON, COLD_CALM_MORNING, HEAT_TRAP];

function weathers(given: Given['weatherCase']): readonly PaneWeather[] {
  if (given === 'all') return NAMED;
  if (given === 'none') return [];
  if (typeof given === 'string') return NAMED.filter((weather) => weather.name === given);
  return [{ ...given, edge_degC: given.edge_degC ?? (given.outdoor_degC + given.indoor_degC) / 2 }];
}

function heatOf(given: Given, glazing: ReadGlazing | null, film: FilmOnClear | null): PaneHeat {
  if (given.layerAbsorptance !== undefined) {
    if (glazing !== null) throw new InputFault('/layerAbsorptance', 'layerAbsorptance and a glazing exclude each other');
    return { layerAbsorptance: given.layerAbsorptance, gaps_m2K_W: given.layerAbsorptance.slice(1).map(() => 0.17) };
  }
  if (glazing === null) throw new InputFault('/panes', 'panes, glazing or layerAbsorptance is needed');
  return paneHeat(glazing.makeUp, film);
}

/** What is given is known; what is left out stays unknown and is planned on the careful side. */
function factsOf(given: Given, pane: { readonly glazing: ReadGlazing | null; readonly heat: PaneHeat; readonly film: FilmOnClear | null }): PaneFacts {
  const { glazing, heat, film } = pane;
  const told = Object.fromEntries(Object.entries(given).filter(([field]) => field in NOTHING_KNOWN)) as Partial<PaneFacts>;
  const edges_m = [given.width_mm, given.height_mm].flatMap((mm) => (mm === undefined ? [] : [mm / 1000]));
  const [width_m, height_m] = edges_m;
  return {
    ...NOTHING_KNOWN,
    layers: heat.layerAbsorptance.length,
    thickness_mm: glazing === null ? null : Math.max(...glazing.makeUp.panes.map((pane) => pane.thickness_mm)),
    tinted: glazing?.tinted ?? null,
    lowE: glazing?.lowE ?? null,
    paneArea_m2: width_m === undefined || height_m === undefined ? null : width_m * height_m,
    longestEdge_m: edges_m.length === 0 ? null : Math.max(...edges_m),
    combinedAbsorptance: glazing !== null && film !== null ? combinedAbsorptance(glazing.makeUp, film) : Math.max(...heat.layerAbsorptance),
    ...told,
  };
}

/** Estimated pane and edge temperatures and edge stress of a filmed pane, and what must be asked before it is filmed. */
export const kernel = defineKernel({
  name: 'pane-stress',
  about: 'Estimated pane and edge temperatures and edge stress with a film, and by the rule table what must be asked first; an estimate for screening, no promise.',
  input,
  run: (given, room) => {
    const glazing = readGlazing(given, room);
    const film = readFilm(given.film, room);
    const heat = heatOf(given, glazing, film);
    const cases: PaneStress[] = weathers(given.weatherCase).map((weather) => paneStress(heat, weather));
    const worst = cases.reduce<PaneStress | null>((most, each) => (most === null || each.stress_MPa > most.stress_MPa ? each : most), null);
    const facts = { ...factsOf(given, { glazing, heat, film }), edgeStress_MPa: worst?.stress_MPa ?? null };
    const { outcome, reasons, rules } = suitability(facts, room.catalogue().suitabilityRules);
    return {
      pane_degC: worst?.pane_degC ?? null,
      edge_degC: worst?.edge_degC ?? null,
      difference_K: worst?.difference_K ?? null,
      stress_MPa: worst?.stress_MPa ?? null,
      weatherCase: worst?.weather ?? null,
      cases,
      combinedAbsorptance: facts.combinedAbsorptance,
      outcome,
      reasons,
      rules,
    };
  },
});
