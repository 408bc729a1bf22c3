import { glazingOptics, highestBehindClear_W_m2, meterPair, pairGlass, W_m2Of_Btu_h_ft2, type PairGlass } from '#calc';
import { z } from 'zod';
import { neededGlazing } from './glass-input.js';
import { defineKernel, InputFault } from './kernel.js';

const share = z.number().min(0).max(1);
const input = z.strictObject({
  bare: z.number().positive(),
  filmed: z.number().min(0),
  outdoors: z.number().positive().optional(),
  unit: z.enum(['W/m2', 'Btu/h.ft2']),
  bareTransmittance: share.optional(),
  bareSolarHeatGain: share.optional(),
  glazing: z.string().optional().describe('KEY of the built-in table, instead of the two figures of the bare glass'),
  inwardFraction: share.optional().describe('of the filmed pane; that of single glass in summer, or of the glazing named, when absent'),
  filmReflectance: z.strictObject({ low: share, best: share, high: share }).optional().describe('of the filmed glass from outdoors'),
  meterAccuracy: z.strictObject({ relative: share, absolute_W_m2: z.number().min(0) }).optional().describe('the larger of the two counts; 0.05 and 10 W/m² when absent'),
  site: z
    .strictObject({ latitude_deg: z.number().min(-66).max(66), date: z.iso.date(), azimuth_deg: z.number().min(-360).max(720) })
    .optional()
    .describe('place, day and facade, for the highest value a reading can have there'),
});

type Given = z.infer<typeof input>;

function bareGlass(given: Given, named: PairGlass | null): PairGlass {
  const bareTransmittance = given.bareTransmittance ?? named?.bareTransmittance;
  const bareSolarHeatGain = given.bareSolarHeatGain ?? named?.bareSolarHeatGain;
  if (bareTransmittance === undefined) throw new InputFault('/bareTransmittance', 'bareTransmittance or glazing is needed');
  if (bareSolarHeatGain === undefined) throw new InputFault('/bareSolarHeatGain', 'bareSolarHeatGain or glazing is needed');
  return { ...named, bareTransmittance, bareSolarHeatGain, ...(given.inwardFraction === undefined ? {} : { inwardFraction: given.inwardFraction }) };
}

/** Two readings behind the glass, judged: sunlight cut, heat cut, and what the meter could not see. */
export const kernel = defineKernel({
  name: 'meter-pair',
  about: 'What a pair of meter readings behind bare and filmed glass says of the cut in sunlight and in heat, with uncertainty and warnings.',
  input,
  run: (given, room) => {
    const named = given.glazing === undefined ? null : pairGlass(glazingOptics(neededGlazing({ glazing: given.glazing }, room).makeUp));
    const inSi = (reading: number): number => (given.unit === 'W/m2' ? reading : W_m2Of_Btu_h_ft2(reading));
    return meterPair({
      bare_W_m2: inSi(given.bare),
      filmed_W_m2: inSi(given.filmed),
      ...(given.outdoors === undefined ? {} : { outdoors_W_m2: inSi(given.outdoors) }),
      ...bareGlass(given, named),
      ...(given.filmReflectance === undefined ? {} : { filmReflectance: given.filmReflectance }),
      ...(given.site === undefined ? {} : { highestBehindClear_W_m2: highestBehindClear_W_m2(given.site) }),
      ...(given.meterAccuracy === undefined ? {} : { meterAccuracy: given.meterAccuracy }),
    });
  },
});
