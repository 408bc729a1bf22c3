import { clearDayGain, largestClearDayGain } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const input = z
  .strictObject({
    latitude_deg: z.number().min(-66).max(66),
    month: z.int().min(1).max(12).describe('1 = January; the 21st of it'),
    azimuth_deg: z.number().min(-360).max(720),
    tilt_deg: z.union([z.literal(90), z.literal(0)]).default(90).describe('90 wall, 0 level'),
    solarTime_h: z.number().min(0).max(24).optional(),
    daily: z.boolean().optional().describe('true: the largest of the whole solar hours, and every hour'),
  })
  .superRefine((given, context) => {
    const asked = (given.solarTime_h === undefined ? 0 : 1) + (given.daily === true ? 1 : 0);
    if (asked !== 1) context.addIssue({ code: 'custom', path: ['solarTime_h'], message: 'give either solarTime_h or daily: true' });
  });

export const kernel = defineKernel({
  name: 'solar-gain-factor',
  about: 'Clear-day solar heat gain behind double-strength sheet glass on the 21st of a month, as the handbook tables give it.',
  input,
  run: ({ solarTime_h, latitude_deg, month, azimuth_deg, tilt_deg }) => {
    const window = { latitude_deg, month, azimuth_deg, tilt_deg };
    const top = largestClearDayGain(window);
    const largest = { largest_W_m2: top.gain_W_m2, largestSolarTime_h: top.solarTime_h };
    if (solarTime_h !== undefined) return { ...clearDayGain(window, solarTime_h), ...largest };
    const hours = Array.from({ length: 23 }, (_, i) => ({ solarTime_h: i + 1, gain_W_m2: clearDayGain(window, i + 1).gain_W_m2 }));
    return { gain_W_m2: top.gain_W_m2, ...largest, hours };
  },
});
