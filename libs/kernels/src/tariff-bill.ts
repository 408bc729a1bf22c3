import { billOfMonths, billYear, readTariff, type TariffText } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const tier = z.looseObject({
  rate: z.number().optional().describe('dollars per kWh or per kW'),
  adj: z.number().optional().describe('dollars, added to rate'),
  max: z.number().optional().describe('upper end, cumulative in the month; the last tier has none'),
  unit: z.string().optional().describe('kWh, kWh daily, kW'),
  sell: z.number().optional().describe('dollars per exported kWh'),
});
const structure = z.array(z.array(tier).min(1)).min(1);
const schedule = z.array(z.array(z.number().int().min(0))).describe('12 months × 24 hours of period numbers');

/** The text, checked for its shape first and then by the reader that the plan uses: its errors stand at their place. */
const tariff = z
  .looseObject({
    label: z.string().default('tariff'),
    name: z.string().optional(),
    energyratestructure: structure,
    energyweekdayschedule: schedule.optional(),
    energyweekendschedule: schedule.optional(),
    demandratestructure: structure.optional(),
    demandweekdayschedule: schedule.optional(),
    demandweekendschedule: schedule.optional(),
    flatdemandstructure: structure.optional(),
    flatdemandmonths: z.array(z.number().int().min(0)).optional(),
    fixedchargefirstmeter: z.number().optional(),
    fixedchargeunits: z.string().optional().describe('$/month, $/day or $/year'),
    mincharge: z.number().optional(),
    minchargeunits: z.string().optional().describe('$/month or $/day'),
    clock: z.enum(['standard', 'daylight']).optional().describe('clock of the schedules; standard when left out'),
    daylightfirstday: z.string().optional().describe('MM-DD'),
    daylightlastday: z.string().optional().describe('MM-DD'),
    dgrules: z.string().optional().describe('Net Metering sets exports off by month and period; otherwise hour by hour'),
  })
  .superRefine((text, context) => {
    for (const { weight, place, seen, expected } of readTariff(text as unknown as TariffText).findings) {
      if (weight === 'error') context.addIssue({ code: 'custom', path: place.split('/').slice(1), message: `expected ${expected}, got ${seen}` });
    }
  });

const twelve = z.array(z.number()).length(12);

const input = z
  .strictObject({
    tariff,
    electricity_kWh: z.array(z.number()).length(8760).optional().describe('by hour of local standard time; below zero where more is sent out than drawn'),
    monthlyUse_kWh: twelve.optional(),
    monthlyPeak_kW: z.array(z.number().min(0)).length(12).optional(),
    startWeekday: z.number().int().min(0).max(6).default(0).describe('weekday of 1 January, 0 = Monday'),
  })
  .refine((given) => (given.electricity_kWh === undefined) !== (given.monthlyUse_kWh === undefined), 'state electricity_kWh or monthlyUse_kWh, one of them')
  .refine((given) => given.monthlyPeak_kW === undefined || given.monthlyUse_kWh !== undefined, { path: ['monthlyPeak_kW'], message: 'peaks go with monthlyUse_kWh; hours have their own' });

/** A year of bills on a tariff of the open form. */
export const kernel = defineKernel({
  name: 'tariff-bill',
  about: 'Twelve monthly bills on a tariff of the open rate-database form, from 8760 hours or from monthly use.',
  input,
  run: ({ tariff: text, electricity_kWh, monthlyUse_kWh, monthlyPeak_kW, startWeekday }) => {
    const read = readTariff(text as unknown as TariffText);
    const bill =
      electricity_kWh === undefined
        ? billOfMonths(read, { use_kWh: monthlyUse_kWh ?? [], ...(monthlyPeak_kW === undefined ? {} : { peak_kW: monthlyPeak_kW }) }, startWeekday)
        : billYear(read, Float64Array.from(electricity_kWh), startWeekday);
    return { ...bill, findings: read.findings };
  },
});
