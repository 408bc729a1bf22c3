import type { ReferenceTable } from './reference-table.js';

interface Given {
  readonly tzOffset_s: number;
  readonly intervalLength_s: number;
  readonly firstStart_s: number;
  readonly blockDuration_s: number;
  readonly values_Wh: readonly number[];
}

interface Expect {
  readonly firstDay: string;
  readonly sum_Wh: number;
}

/** The first readings of the open project's own test file of the energy-usage form. */
export const espiReadings: ReferenceTable<Given, Expect> = {
  of: 'intake/bills/espi-bills',
  source: 'OpenESPI-Common-java, test fixture test_usage_data_01.xml (Apache-2.0): start, interval, local time and first eight values of the first block',
  seen: 'in the source',
  tolerance: { abs: 1e-9, why: 'whole watt-hours, summed' },
  rows: [
    {
      given: { tzOffset_s: -18_000, intervalLength_s: 900, firstStart_s: 1_330_578_000, blockDuration_s: 86_400, values_Wh: [282, 323, 294, 331, 321, 316, 299, 325] },
      expect: { firstDay: '2012-03-01', sum_Wh: 2491 },
      place: 'first IntervalBlock; 1330578000 is 2012-03-01 05:00 UTC, midnight five hours west',
    },
  ],
};
