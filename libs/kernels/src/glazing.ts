import { glazingOptics, SUMMER_FILMS, survivingCut, type GlazingAtAngle, type SurfaceFilms } from '#calc';
import { z } from 'zod';
import { filmInput, glazingFields, neededGlazing, readFilm } from './glass-input.js';
import { defineKernel } from './kernel.js';

const input = z.strictObject({
  ...glazingFields,
  film: filmInput.optional().describe('KEY, or figures on 3 mm clear'),
  incidence_deg: z.array(z.number().min(0).max(90)).default([0, 40, 50, 60, 70, 80]),
  films: z
    .strictObject({ outdoor_W_m2K: z.number().positive().optional(), indoor_W_m2K: z.number().positive().optional() })
    .optional()
    .describe('surface coefficients; 20.3 and 3.2 + 6.1 × emissivity of the room face when absent'),
});

type Given = z.infer<typeof input>;

function surfaceOf(films: Given['films']): SurfaceFilms {
  const outdoor_W_m2K = films?.outdoor_W_m2K ?? SUMMER_FILMS.outdoor_W_m2K;
  if (films?.indoor_W_m2K === undefined) return { ...SUMMER_FILMS, outdoor_W_m2K };
  return { outdoor_W_m2K, indoorConvection_W_m2K: films.indoor_W_m2K, indoorRadiation_W_m2K: 0 };
}

/** Arrays by angle; absorptance first by layer, outdoors first, then by angle. */
function byAngle(samples: readonly GlazingAtAngle[], layers: number): object {
  return {
    solarTransmittance: samples.map((at) => at.solarTransmittance),
    frontReflectance: samples.map((at) => at.frontReflectance),
    backReflectance: samples.map((at) => at.backReflectance),
    layerAbsorptance: Array.from({ length: layers }, (_, k) => samples.map((at) => at.layerAbsorptance[k])),
    solarHeatGain: samples.map((at) => at.solarHeatGain),
  };
}

/** A glazing by angle of incidence, bare or filmed, with its U-factor and the filmed pane. */
export const kernel = defineKernel({
  name: 'glazing',
  about: 'Solar transmittance, reflectance, absorptance and heat gain of a glazing by angle, bare or filmed, and its U-factor; absorptance is listed by layer, then by angle.',
  input,
  run: (given, room) => {
    const { makeUp } = neededGlazing(given, room);
    const film = readFilm(given.film, room);
    const optics = glazingOptics(makeUp, film, surfaceOf(given.films));
    const { panes } = optics.makeUp;
    return {
      incidence_deg: given.incidence_deg,
      ...byAngle(given.incidence_deg.map(optics.at), panes.length),
      hemispherical: optics.hemispherical,
      uFactor_W_m2K: optics.uFactor_W_m2K,
      inwardFractions: optics.inwardFractions,
      panes,
      filmedPane: film === null ? null : panes[film.side === 'room' ? panes.length - 1 : 0],
      ...(film === null ? {} : { filmBenefit: survivingCut(makeUp, film) }),
    };
  },
});
