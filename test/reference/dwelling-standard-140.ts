import type { ReferenceTable } from './reference-table.js';

export type Range = readonly [least: number, most: number];

/** What the programs found for a case with heating and cooling, and the limits set on it. */
export interface ThermalRanges {
  readonly cooling_MWh: Range;
  readonly coolingAcceptance_MWh: Range;
  readonly heating_MWh: Range;
  readonly heatingAcceptance_MWh: Range;
  readonly peakCooling_kW: Range;
  readonly peakHeating_kW: Range;
  /** Of the published 5R1C model with h_is tuned to 2.1. */
  readonly published5R1C_MWh: { readonly heating: number; readonly cooling: number };
}

const SOURCE = 'ANSI/ASHRAE Standard 140-2020, thermal fabric suite, Tables B8-1 to B8-15 (six programs), weather Denver Intl 725650 TMY3; acceptance limits and 5R1C results: user guide of a public building model library, ISO 13790 validation';
const WHY = 'a range, not a value: a result counts when it lies in the programs’ own range or in the acceptance limits';

/** Cases run with heating and cooling. */
export const thermalCases: ReferenceTable<{ readonly case: string }, ThermalRanges> = {
  of: 'calc/dwelling/dwelling-year',
  source: SOURCE,
  seen: 'quoted elsewhere',
  tolerance: { why: WHY },
  rows: [
    {
      given: { case: '600' },
      expect: {
        cooling_MWh: [5.432, 6.162], coolingAcceptance_MWh: [5.0, 6.83],
        heating_MWh: [3.993, 4.504], heatingAcceptance_MWh: [3.75, 4.98],
        peakCooling_kW: [5.422, 6.481], peakHeating_kW: [3.02, 3.359],
        published5R1C_MWh: { heating: 4.658, cooling: 5.803 },
      },
      place: '600 Base Case, South Windows',
    },
    {
      given: { case: '620' },
      expect: {
        cooling_MWh: [3.841, 4.404], coolingAcceptance_MWh: [2.76, 5.19],
        heating_MWh: [4.094, 4.719], heatingAcceptance_MWh: [3.67, 5.38],
        peakCooling_kW: [3.955, 4.797], peakHeating_kW: [3.038, 3.385],
        published5R1C_MWh: { heating: 4.824, cooling: 4.009 },
      },
      place: '620 East & West Windows',
    },
    {
      given: { case: '640' },
      expect: {
        cooling_MWh: [5.237, 5.893], coolingAcceptance_MWh: [4.44, 6.86],
        heating_MWh: [2.403, 2.682], heatingAcceptance_MWh: [1.58, 3.76],
        peakCooling_kW: [5.365, 6.429], peakHeating_kW: [4.039, 4.658],
        published5R1C_MWh: { heating: 2.898, cooling: 5.617 },
      },
      place: '640 Case 600 with Htg Temp. Setback',
    },
    {
      given: { case: '650' },
      expect: {
        cooling_MWh: [4.186, 4.945], coolingAcceptance_MWh: [3.46, 5.88],
        heating_MWh: [0.0, 0.0], heatingAcceptance_MWh: [0.0, 0.0],
        peakCooling_kW: [5.045, 6.29], peakHeating_kW: [0.0, 0.0],
        published5R1C_MWh: { heating: 0.0, cooling: 4.821 },
      },
      place: '650 Case 600 with Night Ventilation',
    },
    {
      given: { case: '670' },
      expect: {
        cooling_MWh: [5.954, 6.623], coolingAcceptance_MWh: [5.05, 7.67],
        heating_MWh: [5.3, 6.14], heatingAcceptance_MWh: [4.0, 7.96],
        peakCooling_kW: [5.839, 6.925], peakHeating_kW: [3.655, 4.221],
        published5R1C_MWh: { heating: 7.381, cooling: 4.975 },
      },
      place: '670 Single-Pane Windows',
    },
    {
      given: { case: '685' },
      expect: {
        cooling_MWh: [8.238, 9.13], coolingAcceptance_MWh: [7.7, 10.14],
        heating_MWh: [4.532, 5.042], heatingAcceptance_MWh: [4.08, 5.75],
        peakCooling_kW: [6.071, 7.159], peakHeating_kW: [3.032, 3.374],
        published5R1C_MWh: { heating: 5.063, cooling: 8.651 },
      },
      place: '685 Case 600 with 20/20 Thermostat',
    },
    {
      given: { case: '900' },
      expect: {
        cooling_MWh: [2.267, 2.714], coolingAcceptance_MWh: [2.35, 2.6],
        heating_MWh: [1.379, 1.814], heatingAcceptance_MWh: [1.04, 2.28],
        peakCooling_kW: [2.556, 3.376], peakHeating_kW: [2.443, 2.778],
        published5R1C_MWh: { heating: 1.833, cooling: 2.284 },
      },
      place: '900 South Windows',
    },
    {
      given: { case: '910' },
      expect: {
        cooling_MWh: [1.191, 1.49], coolingAcceptance_MWh: [0.86, 2.0],
        heating_MWh: [1.648, 2.163], heatingAcceptance_MWh: [1.56, 2.3],
        peakCooling_kW: [2.081, 2.722], peakHeating_kW: [2.469, 2.799],
        published5R1C_MWh: { heating: 2.284, cooling: 1.674 },
      },
      place: '910 S. Windows + Overhang',
    },
    {
      given: { case: '940' },
      expect: {
        cooling_MWh: [2.203, 2.613], coolingAcceptance_MWh: [2.24, 3.14],
        heating_MWh: [0.863, 1.389], heatingAcceptance_MWh: [0.22, 1.91],
        peakCooling_kW: [2.556, 3.376], peakHeating_kW: [3.052, 3.882],
        published5R1C_MWh: { heating: 1.242, cooling: 2.251 },
      },
      place: '940 Case 900 with Htg Temp. Setback',
    },
    {
      given: { case: '980' },
      expect: {
        cooling_MWh: [3.501, 3.995], coolingAcceptance_MWh: [3.52, 4.49],
        heating_MWh: [0.246, 0.72], heatingAcceptance_MWh: [-0.61, 1.28],
        peakCooling_kW: [2.93, 3.668], peakHeating_kW: [1.254, 1.693],
        published5R1C_MWh: { heating: 0.494, cooling: 3.658 },
      },
      place: '980 Case 900 with Increased Insulation',
    },
    {
      given: { case: '985' },
      expect: {
        cooling_MWh: [5.88, 7.273], coolingAcceptance_MWh: [5.95, 7.26],
        heating_MWh: [2.12, 2.801], heatingAcceptance_MWh: [1.68, 3.09],
        peakCooling_kW: [3.208, 4.225], peakHeating_kW: [2.452, 2.785],
        published5R1C_MWh: { heating: 2.333, cooling: 5.905 },
      },
      place: '985 Case 900 with 20/20 Thermostat',
    },
    {
      given: { case: '660' },
      expect: {
        cooling_MWh: [2.966, 3.34], coolingAcceptance_MWh: [1.91, 4.33],
        heating_MWh: [3.574, 3.821], heatingAcceptance_MWh: [2.68, 4.82],
        peakCooling_kW: [3.343, 3.933], peakHeating_kW: [2.62, 2.955],
        published5R1C_MWh: { heating: 3.898, cooling: 3.185 },
      },
      place: '660 Low-E Windows',
    },
  ],
};

/** Cases without plant: air temperature through the year. */
export const freeFloatCases: ReferenceTable<{ readonly case: string }, { readonly max_degC: Range; readonly min_degC: Range; readonly mean_degC: Range }> = {
  of: 'calc/dwelling/dwelling-year',
  source: SOURCE,
  seen: 'quoted elsewhere',
  tolerance: { why: WHY },
  rows: [
    { given: { case: '600FF' }, expect: { max_degC: [62.4, 68.4], min_degC: [-13.8, -9.9], mean_degC: [24.3, 26.1] }, place: '600FF - Low Mass Building with South Windows' },
    { given: { case: '900FF' }, expect: { max_degC: [43.3, 46.0], min_degC: [0.6, 2.2], mean_degC: [24.5, 25.7] }, place: '900FF - High Mass Building with South Windows' },
    { given: { case: '950FF' }, expect: { max_degC: [36.1, 37.1], min_degC: [-13.4, -12.5], mean_degC: [14.3, 15.0] }, place: '950FF - Case 900FF with Night Ventilation' },
  ],
};

/** Differences between cases: what a change of glass, side or set point does. */
export const stepCases: ReferenceTable<{ readonly case: string; readonly from: string }, { readonly cooling_MWh: Range; readonly heating_MWh?: Range }> = {
  of: 'calc/dwelling/dwelling-year',
  source: SOURCE,
  seen: 'quoted elsewhere',
  tolerance: { why: 'the programs’ own range of the difference' },
  rows: [
    { given: { case: '620', from: '600' }, expect: { cooling_MWh: [-1.968, -1.418], heating_MWh: [0.101, 0.32] }, place: '620 − 600' },
    { given: { case: '640', from: '600' }, expect: { cooling_MWh: [-0.302, -0.018], heating_MWh: [-1.851, -1.368] }, place: '640 − 600' },
    { given: { case: '650', from: '600' }, expect: { cooling_MWh: [-1.259, -1.147] }, place: '650 − 600' },
    { given: { case: '670', from: '600' }, expect: { cooling_MWh: [0.358, 0.717], heating_MWh: [1.292, 1.636] }, place: '670 − 600' },
    { given: { case: '685', from: '600' }, expect: { cooling_MWh: [2.806, 3.308], heating_MWh: [0.482, 0.599] }, place: '685 − 600' },
    { given: { case: '660', from: '600' }, expect: { cooling_MWh: [-2.943, -2.172], heating_MWh: [-0.714, -0.226] }, place: '660 − 600' },
    { given: { case: '900', from: '600' }, expect: { cooling_MWh: [-3.674, -3.049], heating_MWh: [-2.777, -2.324] }, place: '900 − 600' },
    { given: { case: '910', from: '900' }, expect: { cooling_MWh: [-1.23, -0.893], heating_MWh: [0.269, 0.483] }, place: '910 − 900' },
    { given: { case: '940', from: '900' }, expect: { cooling_MWh: [-0.101, -0.04], heating_MWh: [-0.645, -0.337] }, place: '940 − 900' },
    { given: { case: '980', from: '900' }, expect: { cooling_MWh: [0.787, 1.531], heating_MWh: [-1.364, -1.006] }, place: '980 − 900' },
    { given: { case: '985', from: '900' }, expect: { cooling_MWh: [3.497, 4.559], heating_MWh: [0.688, 1.075] }, place: '985 − 900' },
  ],
};

/** Sun on the faces of the building, nothing before them. */
export const incidentSun: ReferenceTable<{ readonly azimuth_deg: number; readonly tilt_deg: number }, { readonly total_kWh_m2: Range }> = {
  of: 'calc/sky/facade-year',
  source: SOURCE,
  seen: 'quoted elsewhere',
  tolerance: { why: 'the programs’ own range, widened by the rounding of the printed kWh (0.5) and, on the level, by the 0.1 % by which ours and theirs sum the same file' },
  rows: [
    { given: { azimuth_deg: 0, tilt_deg: 0 }, expect: { total_kWh_m2: [1663.0, 1670.0] }, place: 'Horizontal' },
    { given: { azimuth_deg: 0, tilt_deg: 90 }, expect: { total_kWh_m2: [399.0, 477.0] }, place: 'North' },
    { given: { azimuth_deg: 90, tilt_deg: 90 }, expect: { total_kWh_m2: [1017.0, 1068.0] }, place: 'East' },
    { given: { azimuth_deg: 180, tilt_deg: 90 }, expect: { total_kWh_m2: [1291.0, 1387.0] }, place: 'South' },
    { given: { azimuth_deg: 270, tilt_deg: 90 }, expect: { total_kWh_m2: [903.0, 997.0] }, place: 'West' },
  ],
};

/** Sun that gets through the windows of a case, kWh a year per square metre of glass. */
export const transmittedSun: ReferenceTable<{ readonly case: string; readonly azimuth_deg: number }, { readonly total_kWh_m2: Range }> = {
  of: 'calc/glass/window-gain',
  source: 'ANSI/ASHRAE Standard 140-2020, tables B8-14 and B8-15 (six programs), weather Denver Intl 725650 TMY3',
  seen: 'quoted elsewhere',
  tolerance: { abs: 0.5, why: 'the programs’ own range, widened by the rounding of the printed kWh' },
  rows: [
    { given: { case: '600', azimuth_deg: 180 }, expect: { total_kWh_m2: [804, 826] }, place: '600, south, double clear' },
    { given: { case: '620', azimuth_deg: 270 }, expect: { total_kWh_m2: [569, 624] }, place: '620, west, double clear' },
    { given: { case: '660', azimuth_deg: 180 }, expect: { total_kWh_m2: [436, 506] }, place: '660, south, low-e' },
    { given: { case: '670', azimuth_deg: 180 }, expect: { total_kWh_m2: [988, 1039] }, place: '670, south, single clear' },
    { given: { case: '610', azimuth_deg: 180 }, expect: { total_kWh_m2: [631, 665] }, place: '610, south, overhang' },
  ],
};
