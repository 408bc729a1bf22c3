import { degCOf_degF, type MeteredPeriod } from '#calc';
import type { ReferenceTable } from './reference-table.js';
import { readValues } from './read-values.js';

export type Meter = 'cooling' | 'heat-and-cool';
type Row = readonly [Meter, 'baseline' | 'reporting', string, string, number, number, number];

const rows = readValues<Row>('bills-monthly.json').rows;

/** Readings of a sample meter, before or after its work. */
export const readingsOf = (meter: Meter, part: Row[1]): { start: string; end: string; use_kWh: number }[] =>
  rows.filter((row) => row[0] === meter && row[1] === part).map(([, , start, end, , use_kWh]) => ({ start, end, use_kWh }));

/** The same as periods with their mean temperature. */
export const periodsOf = (meter: Meter, part: Row[1]): MeteredPeriod[] =>
  rows.filter((row) => row[0] === meter && row[1] === part).map(([, , , , days, use_kWh, outdoor_degF]) => ({ days, use_kWh, outdoor_degC: degCOf_degF(outdoor_degF) }));

const source = 'ordinary fits of an independent program on the open meter samples (openeemeter/eemeter samples, commit 6c932ee0); stated definitions';
const rounding = { rel: 1e-5, why: 'temperatures in the sample are rounded' };

interface PointFit {
  readonly cooling_degF?: number;
  readonly base: number;
  readonly cooling_kWh_dayF: number;
  readonly heating_kWh_dayF?: number;
  readonly r2: number;
  readonly cvRmse: number;
  readonly rmse: number;
  readonly n: number;
  readonly p: number;
}

/** Change-point fits on the mean temperature of each bill. */
export const changePointFits: ReferenceTable<{ readonly meter: Meter; readonly model: '3PC' | '5P' }, PointFit> = {
  of: 'calc/verification/change-point-fit',
  source,
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [
    {
      given: { meter: 'cooling', model: '3PC' },
      expect: { cooling_degF: 57.7, base: 8.206864566278991, cooling_kWh_dayF: 2.7219749275657605, r2: 0.9965196920825558, cvRmse: 0.058631265416783936, rmse: 1.5648012868373529, n: 12, p: 3 },
      place: 'cooling meter, one change point on tenths of °F',
    },
    {
      given: { meter: 'heat-and-cool', model: '5P' },
      // The sum of squares is flat: the points themselves are not part of the check.
      expect: { base: 15.18828039890358, cooling_kWh_dayF: 1.3053373263021644, heating_kWh_dayF: 0.8811460399806557, r2: 0.9836666039181856, cvRmse: 0.047056638206857654, rmse: 1.3229506891465672, n: 13, p: 5 },
      place: 'heat-and-cool meter, two change points on halves of °F from the lowest mean',
    },
  ],
};

interface DegreeDays {
  readonly cooling_degF: number;
  readonly heating_degF: number | null;
  readonly base: number;
  readonly cooling_kWh_dayF: number;
  readonly heating_kWh_dayF: number;
  readonly r2Adjusted: number;
  readonly cvRmse?: number;
  readonly nmbe?: number;
}

/** Degree-day fits: balance points of 65 and 60 °F, or the best of whole degrees. */
export const degreeDayFits: ReferenceTable<{ readonly meter: Meter; readonly isSearched: boolean }, DegreeDays> = {
  of: 'calc/verification/degree-day-fit',
  source,
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [
    {
      given: { meter: 'cooling', isSearched: false },
      expect: { cooling_degF: 65, heating_degF: null, base: 8.67392457082456, cooling_kWh_dayF: 4.43424659188778, heating_kWh_dayF: 0, r2Adjusted: 0.9890267969733291, cvRmse: 0.09508020141750124, nmbe: 0.0005110036069575644 },
      place: 'cooling meter, 65 °F',
    },
    {
      given: { meter: 'cooling', isSearched: true },
      expect: { cooling_degF: 59, heating_degF: null, base: 6.448897467427871, cooling_kWh_dayF: 3.0228881393443547, heating_kWh_dayF: 0, r2Adjusted: 0.9975859293622449 },
      place: 'cooling meter, searched',
    },
    {
      given: { meter: 'heat-and-cool', isSearched: false },
      expect: { cooling_degF: 65, heating_degF: 60, base: 10.192222747428657, cooling_kWh_dayF: 2.160927588586693, heating_kWh_dayF: 0.9272661361371233, r2Adjusted: 0.9878747877308978, cvRmse: 0.033442616602630586, nmbe: -0.0003853090305732651 },
      place: 'heat-and-cool meter, 65 and 60 °F',
    },
    {
      given: { meter: 'heat-and-cool', isSearched: true },
      expect: { cooling_degF: 67, heating_degF: 53, base: 13.703093454750348, cooling_kWh_dayF: 2.2266239202346068, heating_kWh_dayF: 1.0848733477569221, r2Adjusted: 0.9942505989009207 },
      place: 'heat-and-cool meter, searched',
    },
  ],
};

interface Saving {
  readonly adjustedBaseline_kWh: number;
  readonly observed_kWh: number;
  readonly savingShare: number;
  readonly days: number;
  readonly cvRmseTotals: number;
  readonly t: number;
  readonly lag1: number;
  readonly effectivePeriods: number;
  readonly reportingMonths: number;
  readonly fractionalUncertainty: number;
  readonly fractionalUncertaintyConstant: number;
}

/** Savings after the work by the fixed degree-day fits of monthly bills; 90 % two-sided. */
export const meteredSavings: ReferenceTable<{ readonly meter: Meter }, Saving> = {
  of: 'calc/verification/metered-saving',
  source,
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [
    {
      given: { meter: 'cooling' },
      expect: {
        adjustedBaseline_kWh: 9470.931195734049, observed_kWh: 9145.93, savingShare: 0.034315653763849256, days: 393, cvRmseTotals: 0.09312051131565888, t: 1.8124611228107335,
        lag1: 0.11955034562519491, effectivePeriods: 9.437177965049516, reportingMonths: 13, fractionalUncertainty: 1.9642612649336195, fractionalUncertaintyConstant: 1.8564960872949285,
      },
      place: 'cooling meter',
    },
    {
      given: { meter: 'heat-and-cool' },
      expect: {
        adjustedBaseline_kWh: 10008.027519398094, observed_kWh: 9172.14, savingShare: 0.08352170472932183, days: 364, cvRmseTotals: 0.033411015014898605, t: 1.8124611228107335,
        lag1: -0.4009495843205143, effectivePeriods: 30.40202313441173, reportingMonths: 12, fractionalUncertainty: 0.2935255011737267, fractionalUncertaintyConstant: 0.28327803082070474,
      },
      place: 'heat-and-cool meter',
    },
  ],
};

interface Daily {
  readonly cooling_degF: number;
  readonly base: number;
  readonly cooling_kWh_dayF: number;
  readonly cvRmse: number;
  readonly r2Adjusted: number;
  readonly lag1: number;
  readonly effectivePeriods: number;
  readonly adjustedBaseline_kWh: number;
  readonly observed_kWh: number;
  readonly savingShare: number;
  readonly fractionalUncertainty: number;
}

/** The cooling meter by day: 2015-12-27 to 2016-12-25 before, 2017-01-04 to 2018-01-03 after the work. */
export const dailyFits: ReferenceTable<{ readonly isSearched: boolean }, Daily> = {
  of: 'calc/verification/metered-saving',
  source,
  seen: 'computed from the stated formula',
  tolerance: rounding,
  rows: [
    {
      given: { isSearched: false },
      expect: {
        cooling_degF: 65, base: 9.047876527522634, cooling_kWh_dayF: 4.3510435403115455, cvRmse: 0.3531158929086479, r2Adjusted: 0.8791572487483883, lag1: 0.06884763183895405, effectivePeriods: 317.97854460699307,
        adjustedBaseline_kWh: 9250.806498788526, observed_kWh: 8971.16, savingShare: 0.03022941824857595, fractionalUncertainty: 1.508975926310355,
      },
      place: '65 °F',
    },
    {
      given: { isSearched: true },
      expect: {
        cooling_degF: 62, base: 7.578904816899996, cooling_kWh_dayF: 3.6096485413169184, cvRmse: 0.34612792589664704, r2Adjusted: 0.8838927456562906, lag1: 0.0635908492059465, effectivePeriods: 321.3541563421704,
        adjustedBaseline_kWh: 9397.245684850906, observed_kWh: 8971.16, savingShare: 0.04534154997541315, fractionalUncertainty: 0.9809069333503965,
      },
      place: 'best whole °F',
    },
  ],
};

/** Student's t, two-sided. */
export const printedT: ReferenceTable<{ readonly confidence: number; readonly freedom: number }, { readonly value: number; readonly within: number }> = {
  of: 'calc/verification/student-t',
  source: 'printed tables of the distribution; the first in full digits from an independent program',
  seen: 'computed from the stated formula',
  tolerance: { why: 'half of the last printed digit of each' },
  rows: [
    { given: { confidence: 0.9, freedom: 10 }, expect: { value: 1.8124611228107335, within: 2e-12 }, place: '90 %, 10 degrees of freedom' },
    { given: { confidence: 0.95, freedom: 30 }, expect: { value: 2.0423, within: 5e-5 }, place: '95 %, 30 degrees of freedom' },
    { given: { confidence: 0.9, freedom: 1e6 }, expect: { value: 1.645, within: 5e-4 }, place: '90 %, a million degrees of freedom' },
  ],
};
