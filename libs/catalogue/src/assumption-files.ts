import type { BlindKind, HeatingKind, PayerRule, PlantKind, ThermalClass } from '#calc';
import { z } from 'zod';
import { assumption } from './assumption.js';

const rate = assumption(z.number().gt(-1).lt(1));
const share = assumption(z.number().min(0).max(1));
const amount = assumption(z.number().nonnegative());
const positive = assumption(z.number().positive());
const temperature_degC = assumption(z.number().min(5).max(35));
const truth = assumption(z.boolean());
const word = <T extends string>(...words: [T, ...T[]]) => assumption(z.enum(words));
const shape = assumption(
  z.array(z.number().nonnegative()).length(24).refine((hours) => Math.abs(hours.reduce((a, b) => a + b, 0) - 1) < 1e-9, 'the hours of a day sum to 1').readonly(),
);

const file = <Values extends z.ZodRawShape>(values: Values) => z.strictObject({ about: z.string().min(1), values: z.strictObject(values) });

const money = file({
  realDiscountRate: rate,
  realEscalation: rate,
  heatingEscalation: rate,
  filmDegradation_1_yr: share,
  labour_cents_h: amount,
  labourIsCash: truth,
  contingencyShare: share,
  materialTaxShare: share,
  labourTaxShare: share,
  film_cents_m2: amount,
  consumables_cents_m2: amount,
  endRemoval_cents_m2: amount,
  electricity_cents_kWh: amount,
  gas_cents_kWh: amount,
  payerRule: word<PayerRule['kind']>('owner', 'tenant', 'sub-meter', 'ratio', 'common'),
});

const dwelling = file({
  'wallU.before-1980': positive,
  'wallU.1980-2005': positive,
  'wallU.after-2005': positive,
  'roofU.before-1980': positive,
  'roofU.1980-2005': positive,
  'roofU.after-2005': positive,
  'airChange.before-1980': positive,
  'airChange.1980-2005': positive,
  'airChange.after-2005': positive,
  'airChange.tight': positive,
  'airChange.average': positive,
  'airChange.leaky': positive,
  ceilingHeight_m: positive,
  exposedWallPerFloor: amount,
  exposedRoof_m2: amount,
  opaqueAbsorptance: share,
  thermalClass: word<ThermalClass>('very-light', 'light', 'medium', 'heavy', 'very-heavy'),
  frameShare: share,
  insectScreenShare: share,
  'screenPasses.insect': share,
  'screenPasses.solar': share,
  blind: word<BlindKind>('none', 'light', 'medium', 'dark'),
  unknownGlazing: assumption(z.string().min(1)),
  oldFilm: assumption(z.string().min(1)),
  albedo: share,
  widestRoll_mm: positive,
});

const use = file({
  'presentEfficiency.single-speed': positive,
  'presentEfficiency.two-speed': positive,
  'presentEfficiency.heat-pump': positive,
  'presentEfficiency.room-unit': positive,
  'presentEfficiency.mini-split': positive,
  'presentEfficiency.central': positive,
  'newEfficiency.single-speed': positive,
  'newEfficiency.two-speed': positive,
  'newEfficiency.heat-pump': positive,
  'newEfficiency.room-unit': positive,
  'newEfficiency.mini-split': positive,
  'newEfficiency.central': positive,
  'splitEfficiency.before-1992': positive,
  'splitEfficiency.1992-2005': positive,
  'splitEfficiency.2006-2014': positive,
  'splitEfficiency.2015-on': positive,
  coolingKind: word<PlantKind>('single-speed', 'two-speed', 'heat-pump', 'room-unit', 'mini-split', 'central'),
  coolingCapacity_W_m2: positive,
  heatingKind: word<HeatingKind>('electric-resistance', 'heat-pump', 'gas', 'none'),
  'heatingEfficiency.electric-resistance': positive,
  'heatingEfficiency.heat-pump': positive,
  'heatingEfficiency.gas': positive,
  'heatingEfficiency.none': positive,
  'plantLife_yr.single-speed': positive,
  'plantLife_yr.two-speed': positive,
  'plantLife_yr.heat-pump': positive,
  'plantLife_yr.room-unit': positive,
  'plantLife_yr.mini-split': positive,
  'plantLife_yr.central': positive,
  coolingSetPoint_degC: temperature_degC,
  heatingSetPoint_degC: temperature_degC,
  occupantsPerFloor: positive,
  personHeat_W: amount,
  baseLoadPerFloor_kWh_m2_yr: amount,
  baseLoadPerOccupant_kWh_yr: amount,
  baseLoadToRoom: share,
  baseLoadShape: shape,
  emptyShare: share,
  ductEfficiency: share,
  'plantAgeing.kept': share,
  'plantAgeing.neglected': share,
  useFactor: share,
  'doubt.setPoint_K': amount,
  'doubt.filmCut': share,
  'doubt.useFactor': share,
  'doubt.efficiency': share,
});

const work = file({
  'filmLife_yr.room': positive,
  'filmLife_yr.outdoor': positive,
  trimPerEdge_mm: amount,
  edgeGap_mm: amount,
  shadeSunlitShare: share,
  contractorMakesGood: truth,
  noAccessShare: share,
  slip_L_m2: positive,
  panesPerBlade: positive,
  crewSize: positive,
  crewDays_wk: positive,
  crewHours_day: positive,
  crews: positive,
  crewIsNew: truth,
  notice_h: amount,
  visit_cents: amount,
  visitMinutes: amount,
  mayRotate: truth,
});

const realisation = file({
  'study.bronzeOffice': share,
  'study.lowEFilmOffices': share,
  'study.stormWindowHomes': share,
  'study.absorbingTestRooms': share,
  'study.reflectiveTestRooms': share,
  'study.modelledShare': share,
  'realisation.explainedShare': share,
  'realisation.leftSpread': positive,
  'calibration.useFactor.spread': amount,
  'calibration.useFactor.limit': amount,
  'calibration.setPoint_K.spread': amount,
  'calibration.setPoint_K.limit': amount,
  'calibration.airChange.spread': amount,
  'calibration.airChange.limit': amount,
  'calibration.efficiency.spread': amount,
  'calibration.efficiency.limit': amount,
  'calibration.base.limit': amount,
  'pooling.portfolio': positive,
  'pooling.building': positive,
  'pooling.planType': positive,
  'pooling.tenant': positive,
  'bills.typicalWeatherError': share,
  'bills.limit.cvRmse': positive,
  'bills.limit.nmbe': positive,
  defectShare: share,
});

/** The check of each assumptions file, by its name in data/assumptions. */
export const assumptionFiles = { money, dwelling, use, work, realisation };

type Files = typeof assumptionFiles;
type ValuesOf<Name extends keyof Files> = z.infer<Files[Name]>['values'];

/** Every default by key. */
export type AssumptionEntries = ValuesOf<'money'> & ValuesOf<'dwelling'> & ValuesOf<'use'> & ValuesOf<'work'> & ValuesOf<'realisation'>;
