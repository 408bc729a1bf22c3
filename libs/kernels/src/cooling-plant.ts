import { coolingPlant, ratedCop, type Efficiency, type PlantState } from '#calc';
import { z } from 'zod';
import { defineKernel, type KernelRoom } from './kernel.js';

const scales = ['seer', 'seer2', 'eer', 'cop', 'kW_ton'] as const;
const rating = z.number().gt(0);

const input = z
  .strictObject({
    kind: z.enum(['single-speed', 'two-speed', 'heat-pump', 'room-unit', 'mini-split', 'central']),
    ratedCapacity_W: z.number().gt(0),
    seer: rating.optional().describe('Btu/Wh over the season'),
    seer2: rating.optional().describe('Btu/Wh over the season, test procedure of 2023'),
    eer: rating.optional().describe('Btu/Wh at 95 °F outdoors'),
    cop: rating.optional().describe('W/W at 95 °F outdoors'),
    kW_ton: rating.optional(),
    age_yr: z.number().min(0).optional().describe('takes off the yearly loss of the built-in data; leave out for no ageing'),
    degradationCoefficient: z.number().min(0).lt(1).optional().describe('default by kind and rating'),
    distributionEfficiency: z.number().gt(0).max(1).default(1),
    sensibleHeatRatio: z.number().gt(0).max(1).optional().describe('default of the built-in data'),
    outdoor_degC: z.number(),
    indoorWetBulb_degC: z.number(),
    sensibleLoad_W: z.number().min(0),
    latentLoad_W: z.number().min(0).optional().describe('moisture of the room; follows the sensible load at the sensible heat ratio when absent'),
  })
  .refine((given) => scales.filter((scale) => given[scale] !== undefined).length === 1, 'state exactly one of seer, seer2, eer, cop, kW_ton');

type Given = z.infer<typeof input>;

function efficiencyOf(given: Given): Efficiency {
  const scale = scales.find((name) => given[name] !== undefined) ?? 'eer';
  return { scale, value: given[scale] ?? 0 };
}

function stateOf(given: Given, room: KernelRoom): PlantState {
  const { plants } = room.catalogue();
  const { kind, ratedCapacity_W, distributionEfficiency, degradationCoefficient, sensibleHeatRatio, age_yr } = given;
  return {
    kind,
    ratedCapacity_W,
    distributionEfficiency,
    performance: plants.performance(kind),
    efficiency: efficiencyOf(given),
    ...(degradationCoefficient === undefined ? {} : { degradationCoefficient }),
    ...(sensibleHeatRatio === undefined ? {} : { sensibleHeatRatio }),
    ...(age_yr === undefined ? {} : { ageing: { age_yr, loss_1_yr: plants.ageing_1_yr.value } }),
  };
}

/** One hour of a cooling machine: what it can do, what it is asked for, what it draws. */
export const kernel = defineKernel({
  name: 'cooling-plant',
  about: 'One hour of a cooling machine: capacity and input at these temperatures, part load, run share and electricity.',
  input,
  run: (given, room) => {
    const plant = stateOf(given, room);
    const { outdoor_degC, indoorWetBulb_degC, sensibleLoad_W, latentLoad_W } = given;
    const ratedCopAt95degF = ratedCop(plant);
    return { ...coolingPlant(plant, { outdoor_degC, indoorWetBulb_degC, sensibleLoad_W, ...(latentLoad_W === undefined ? {} : { latentLoad_W }) }), ratedCop: ratedCopAt95degF };
  },
});
