import type { ReferenceTable } from './reference-table.js';

export interface CurveGiven {
  readonly kind: 'single-speed' | 'heat-pump' | 'room-unit';
  readonly unit: 'degF' | 'degC';
  readonly wetBulb: number;
  readonly outdoor: number;
}

/** Curves of machines at stated temperatures. */
export const plantCurves: ReferenceTable<CurveGiven, { readonly capacityFactor: number; readonly inputFactor: number }> = {
  of: 'calc/cooling/curve',
  source: 'NREL/TP-5500-56354 (Cutler et al. 2013), Tables 7–13, as carried in public residential models; room unit: Winkler et al. (NREL, 2013)',
  seen: 'computed from the stated formula',
  tolerance: { abs: 4e-8, why: 'the same polynomial; the room unit rows print temperatures to 1e-6 °C, which moves a factor by up to 3e-8' },
  rows: [
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 95 }, expect: { capacityFactor: 0.9939132259999999, inputFactor: 1.0091561370000002 }, place: 'check of single-speed, 67/95 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 82 }, expect: { capacityFactor: 1.0594923109999996, inputFactor: 0.8050774179999998 }, place: 'check of single-speed, 67/82 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 105 }, expect: { capacityFactor: 0.9398797759999996, inputFactor: 1.215506507 }, place: 'check of single-speed, 67/105 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 115 }, expect: { capacityFactor: 0.8827263259999998, inputFactor: 1.4647844769999998 }, place: 'check of single-speed, 67/115 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 63, outdoor: 95 }, expect: { capacityFactor: 0.9415650220000007, inputFactor: 1.0624284530000003 }, place: 'check of single-speed, 63/95 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 63, outdoor: 82 }, expect: { capacityFactor: 1.0002865030000005, inputFactor: 0.8508069259999999 }, place: 'check of single-speed, 63/82 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 71, outdoor: 95 }, expect: { capacityFactor: 1.0768504220000001, inputFactor: 0.9220599489999997 }, place: 'check of single-speed, 71/95 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 70 }, expect: { capacityFactor: 1.115346851, inputFactor: 0.6810884620000001 }, place: 'check of single-speed, 67/70 degF' },
    { given: { kind: 'single-speed', unit: 'degF', wetBulb: 67, outdoor: 75 }, expect: { capacityFactor: 1.092620126, inputFactor: 0.7252381970000003 }, place: 'check of single-speed, 67/75 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 95 }, expect: { capacityFactor: 0.9915697820000006, inputFactor: 1.0108857399999986 }, place: 'check of heat-pump, 67/95 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 82 }, expect: { capacityFactor: 1.0596090910000004, inputFactor: 0.812902304999999 }, place: 'check of heat-pump, 67/82 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 105 }, expect: { capacityFactor: 0.9363108520000006, inputFactor: 1.205830739999999 }, place: 'check of heat-pump, 67/105 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 115 }, expect: { capacityFactor: 0.8785119220000006, inputFactor: 1.4378627399999986 }, place: 'check of heat-pump, 67/115 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 63, outdoor: 95 }, expect: { capacityFactor: 0.9377208140000005, inputFactor: 1.0646183839999983 }, place: 'check of heat-pump, 63/95 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 63, outdoor: 82 }, expect: { capacityFactor: 0.9989116190000004, inputFactor: 0.8591417489999985 }, place: 'check of heat-pump, 63/82 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 71, outdoor: 95 }, expect: { capacityFactor: 1.0760221740000007, inputFactor: 0.923577703999999 }, place: 'check of heat-pump, 71/95 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 70 }, expect: { capacityFactor: 1.1186046070000004, inputFactor: 0.685778864999999 }, place: 'check of heat-pump, 67/70 degF' },
    { given: { kind: 'heat-pump', unit: 'degF', wetBulb: 67, outdoor: 75 }, expect: { capacityFactor: 1.0944676420000004, inputFactor: 0.732256739999999 }, place: 'check of heat-pump, 67/75 degF' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 35.0 }, expect: { capacityFactor: 0.9946742901234567, inputFactor: 0.9990367283950614 }, place: 'check of room-unit, 19.444444/35.0 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 27.777778 }, expect: { capacityFactor: 1.0564668209876542, inputFactor: 0.8429645061728395 }, place: 'check of room-unit, 19.444444/27.777778 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 40.555556 }, expect: { capacityFactor: 0.9341863271604938, inputFactor: 1.1534503086419752 }, place: 'check of room-unit, 19.444444/40.555556 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 46.111111 }, expect: { capacityFactor: 0.8624329320987655, inputFactor: 1.3377404320987654 }, place: 'check of room-unit, 19.444444/46.111111 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 17.222222, outdoor: 35.0 }, expect: { capacityFactor: 0.9177663641975307, inputFactor: 1.0988737654320988 }, place: 'check of room-unit, 17.222222/35.0 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 17.222222, outdoor: 27.777778 }, expect: { capacityFactor: 0.9806204012345677, inputFactor: 0.9218410493827162 }, place: 'check of room-unit, 17.222222/27.777778 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 21.666667, outdoor: 35.0 }, expect: { capacityFactor: 1.0760572777777777, inputFactor: 0.9460638888888889 }, place: 'check of room-unit, 21.666667/35.0 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 21.111111 }, expect: { capacityFactor: 1.0966079320987654, inputFactor: 0.7437126543209875 }, place: 'check of room-unit, 19.444444/21.111111 degC' },
    { given: { kind: 'room-unit', unit: 'degC', wetBulb: 19.444444, outdoor: 23.888889 }, expect: { capacityFactor: 1.0818539197530863, inputFactor: 0.7798391975308642 }, place: 'check of room-unit, 19.444444/23.888889 degC' },
  ],
};

export interface PlantHourRow {
  readonly sensibleLoad_W: number;
  readonly ratedCapacity_W: number;
  readonly eer: number;
  readonly sensibleHeatRatio: number;
  readonly degradationCoefficient: number;
  readonly indoorWetBulb_degF: number;
  readonly outdoor_degF: number;
  readonly distributionEfficiency: number;
}
export interface PlantHourFigures {
  readonly capacityFactor: number;
  readonly inputFactor: number;
  readonly availableCapacity_W: number;
  readonly coilLoad_W: number;
  readonly partLoadRatio: number;
  readonly partLoadFactor: number;
  readonly runShare: number;
  readonly electricity_W: number;
}

/** Whole hours of a single-speed machine, worked by the stated chain. */
export const plantHours: ReferenceTable<PlantHourRow, PlantHourFigures> = {
  of: 'calc/cooling/plant-hour',
  source: 'single-speed curves of NREL/TP-5500-56354; load = sensible/(SHR × distribution efficiency), PLR = load/capacity, PLF = 1 − Cd(1 − PLR), power = PLR/PLF × capacity/(EER/3.412141633) × input factor',
  seen: 'computed from the stated formula',
  tolerance: { rel: 1e-9, why: '3.412141633 is a rounded 3.41214163312794; temperatures go through degrees Celsius and back' },
  rows: [
    {
      given: { sensibleLoad_W: 3000, ratedCapacity_W: 7033.7057, eer: 11, sensibleHeatRatio: 0.75, degradationCoefficient: 0.2, indoorWetBulb_degF: 67, outdoor_degF: 95, distributionEfficiency: 1.0 },
      expect: { capacityFactor: 0.9939132259999999, inputFactor: 1.0091561370000002, availableCapacity_W: 6990.893123021588, coilLoad_W: 4000.0, partLoadRatio: 0.5721729583917783, partLoadFactor: 0.9144345916783556, runShare: 0.6257122856011064, electricity_W: 1369.3046254895087 },
      place: 'hour 1',
    },
    {
      given: { sensibleLoad_W: 1500, ratedCapacity_W: 7033.7057, eer: 11, sensibleHeatRatio: 0.75, degradationCoefficient: 0.2, indoorWetBulb_degF: 67, outdoor_degF: 85, distributionEfficiency: 1.0 },
      expect: { capacityFactor: 1.0448266759999998, inputFactor: 0.8457333670000001, availableCapacity_W: 7349.003346493252, coilLoad_W: 2000.0, partLoadRatio: 0.27214574626018456, partLoadFactor: 0.854429149252037, runShare: 0.3185117765450999, electricity_W: 614.0754985592961 },
      place: 'hour 2',
    },
    {
      given: { sensibleLoad_W: 1500, ratedCapacity_W: 7033.7057, eer: 11, sensibleHeatRatio: 0.75, degradationCoefficient: 0.25, indoorWetBulb_degF: 63, outdoor_degF: 85, distributionEfficiency: 0.85 },
      expect: { capacityFactor: 0.9872033920000006, inputFactor: 0.8932035230000003, availableCapacity_W: 6943.6981253697395, coilLoad_W: 2352.9411764705883, partLoadRatio: 0.3388599466721918, partLoadFactor: 0.8347149866680479, runShare: 0.40595886270693105, electricity_W: 781.0118997030896 },
      place: 'hour 3',
    },
  ],
};

/** Gross COP at 95 °F behind a SEER, as published, and the steps of the chain that gives it. */
export const seerChain: ReferenceTable<{ readonly seer: number; readonly degradation: number }, { readonly eerAt82degF: number; readonly eerAt95degF: number; readonly grossCop: number }> = {
  of: 'calc/cooling/efficiency',
  source: 'NREL/TP-5500-56354, Table 8, as carried in public residential models: gross COP 2.47, 3.18, 4.00, 4.38, 4.77 at SEER 8, 10, 13, 14, 15',
  seen: 'quoted elsewhere',
  tolerance: { rel: 1e-9, why: 'the published two decimals carried on by the same chain with the same constants' },
  rows: [
    { given: { seer: 8, degradation: 0.2 }, expect: { eerAt82degF: 8.88888888888889, eerAt95degF: 7.317057357720158, grossCop: 2.4664353923359887 }, place: 'SEER 8' },
    { given: { seer: 10, degradation: 0.2 }, expect: { eerAt82degF: 11.11111111111111, eerAt95degF: 9.198005805585582, grossCop: 3.1842684464085877 }, place: 'SEER 10' },
    { given: { seer: 13, degradation: 0.07 }, expect: { eerAt82degF: 13.471502590673575, eerAt95degF: 11.219326434583717, grossCop: 4.000222838308385 }, place: 'SEER 13' },
    { given: { seer: 14, degradation: 0.07 }, expect: { eerAt82degF: 14.507772020725389, eerAt95degF: 12.114467040379136, grossCop: 4.3773738402620985 }, place: 'SEER 14' },
    { given: { seer: 15, degradation: 0.07 }, expect: { eerAt82degF: 15.544041450777202, eerAt95degF: 13.01437898574467, grossCop: 4.766882991791193 }, place: 'SEER 15' },
    { given: { seer: 16, degradation: 0.07 }, expect: { eerAt82degF: 16.580310880829018, eerAt95degF: 13.5560673417272, grossCop: 4.3146766232535505 }, place: 'SEER 16' },
  ],
};

const printed: readonly (readonly [seer: number, grossCop: number])[] = [[8, 2.47], [10, 3.18], [13, 4.0], [14, 4.38], [15, 4.77]];

/** The published two decimals themselves. */
export const publishedGrossCops: ReferenceTable<{ readonly seer: number; readonly degradation: number }, { readonly grossCop: number }> = {
  of: 'calc/cooling/efficiency',
  source: 'NREL/TP-5500-56354, Table 8, as carried in public residential models; degradation 0.2 below SEER 13, 0.07 from it',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0.005, why: 'half of the last printed digit' },
  rows: printed.map(([seer, grossCop]) => ({ given: { seer, degradation: seer < 13 ? 0.2 : 0.07 }, expect: { grossCop }, place: `Table 8, SEER ${seer}` })),
};
