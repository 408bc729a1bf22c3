import type { Efficiency, PlantKind, PlantPerformance } from '#calc';
import { degCOf_degF } from '#calc';
import { z } from 'zod';
import { readData } from './data-folder.js';

const figure = <T extends z.ZodType>(value: T) =>
  z.strictObject({ value, unit: z.string().min(1), validFrom: z.iso.date(), source: z.string().min(1), basis: z.enum(['published', 'measured', 'assumed']) });
const share = z.number().gt(0).max(1);
const part = figure(z.number().min(0).lt(1));
const pair = figure(z.tuple([z.number(), z.number()]));
const curve = figure(z.tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()]));
const kinds = ['single-speed', 'two-speed', 'heat-pump', 'room-unit', 'mini-split', 'central'] as const satisfies readonly PlantKind[];
const scales = ['seer', 'seer2', 'eer', 'cop', 'kW_ton'] as const satisfies readonly Efficiency['scale'][];

const plantsFile = z.strictObject({
  plants: z.array(
    z.strictObject({
      kind: z.enum(kinds),
      temperature: z.enum(['degF', 'degC']),
      speeds: z.array(z.strictObject({ capacityShare: figure(share), capacity: curve, input: curve })).min(1).max(2),
      degradation: z.strictObject({ under13Seer: part, seer13AndOver: part }),
      seer2OverSeer: figure(share),
      sensibleHeatRatio: figure(share),
      scales: z.array(z.enum(scales)).min(1),
    }),
  ),
  wetBulbRange_degF: pair,
  outdoorRange_degF: pair,
  seerFan_W_cfm: z.strictObject({ underSeer16: part, seer16AndOver: part }),
  ageing_1_yr: part,
  distribution: z.array(z.strictObject({ key: z.string(), efficiency: figure(share) })),
  replacementSizes_ton: figure(z.array(z.number().gt(0))),
});
/** A figure of the built-in data with where it comes from. */
export interface SourcedFigure {
  readonly value: number;
  readonly unit: string;
  readonly validFrom: string;
  readonly source: string;
  readonly basis: 'published' | 'measured' | 'assumed';
}

/** Machines that cool. */
export interface PlantCatalogue {
  readonly performance: (kind: PlantKind) => PlantPerformance;
  /** Loss of efficiency a year, for those who ask for ageing. */
  readonly ageing_1_yr: SourcedFigure;
  readonly distribution: ReadonlyMap<string, SourcedFigure>;
  readonly replacementSizes_ton: readonly number[];
}

/**
 * Opens the built-in cooling data and checks it.
 *
 * @param folder the data folder
 * @throws ZodError when a file is not as it should be
 */
export function openCooling(folder: string): PlantCatalogue {
  const plants = plantsFile.parse(readData(folder, 'cooling/plants.json'));
  const ranges = { wetBulbRange_degC: celsius(plants.wetBulbRange_degF.value), outdoorRange_degC: celsius(plants.outdoorRange_degF.value) };
  const fan = plants.seerFan_W_cfm;
  const performances = new Map(
    plants.plants.map((of): [PlantKind, PlantPerformance] => [
      of.kind,
      {
        kind: of.kind,
        temperature: of.temperature,
        speeds: of.speeds.map((speed) => ({ capacityShare: speed.capacityShare.value, capacity: speed.capacity.value, input: speed.input.value })),
        degradation: { under13Seer: of.degradation.under13Seer.value, seer13AndOver: of.degradation.seer13AndOver.value },
        seer2OverSeer: of.seer2OverSeer.value,
        seerFan_W_cfm: { underSeer16: fan.underSeer16.value, seer16AndOver: fan.seer16AndOver.value },
        sensibleHeatRatio: of.sensibleHeatRatio.value,
        scales: of.scales,
        ...ranges,
      },
    ]),
  );
  return {
    performance: (kind) => found(performances.get(kind), kind),
    ageing_1_yr: plants.ageing_1_yr,
    distribution: new Map(plants.distribution.map(({ key, efficiency }) => [key, efficiency])),
    replacementSizes_ton: plants.replacementSizes_ton.value,
  };
}

const celsius = ([low, high]: readonly [number, number]): readonly [number, number] => [degCOf_degF(low), degCOf_degF(high)];

function found<T>(entry: T | undefined, key: string): T {
  if (entry === undefined) throw new RangeError(`kind must be in the cooling data, got ${key}`);
  return entry;
}
