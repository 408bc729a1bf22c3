import { sunlitShare } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const length = z.number().min(0).lt(1000).default(0);
const share = z.number().min(0).max(1);

export const kernel = defineKernel({
  name: 'sunlit-share',
  about: 'Share of a window in the sun and of the sky it sees, past overhang, fins, reveal and skyline.',
  input: z.strictObject({
    sunAltitude_deg: z.number().min(-90).max(90).describe('true, without refraction'),
    sunAzimuth_deg: z.number().min(-360).max(720),
    azimuth_deg: z.number().min(-360).max(720),
    tilt_deg: z.number().min(0).max(180).default(90),
    width_m: z.number().gt(0).lt(1000).describe('of the glass'),
    height_m: z.number().gt(0).lt(1000).describe('of the glass'),
    overhangDepth_m: length,
    overhangGap_m: length.describe('from the top of the glass up to the overhang'),
    finDepth_m: length,
    finGap_m: length.describe('from the side of the glass to the fin'),
    reveal_m: length.describe('how far the glass stands back'),
    leaf: share.default(1).describe('1 trees in leaf, 0 bare'),
    horizon: z
      .array(z.strictObject({ azimuth_deg: z.number(), altitude_deg: z.number().min(0).max(90), passes: share.optional(), passesBare: share.optional() }))
      .default([])
      .describe('skyline, straight between bearings up to 180° apart; one point stands for the whole skyline'),
  }),
  run: ({ sunAltitude_deg, sunAzimuth_deg, azimuth_deg, tilt_deg, leaf, horizon, ...lengths }) => {
    const points = horizon.map(({ passes, passesBare, ...point }) => ({ ...point, ...(passes === undefined ? {} : { passes }), ...(passesBare === undefined ? {} : { passesBare }) }));
    const result = sunlitShare({ sunAltitude_deg, sunAzimuth_deg, azimuth_deg, tilt_deg, leaf, geometry: { ...lengths, horizon: points } });
    return result.profile_deg === null ? { ...result, why: 'the sun is behind the window' } : result;
  },
});
