import { irradianceOnFacade } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

const radiation = z.number().min(0);

export const kernel = defineKernel({
  name: 'facade-irradiance',
  about: 'Beam, sky and ground light on a facade in one hour, nothing standing in front of it.',
  input: z.strictObject({
    sunAltitude_deg: z.number().min(-90).max(90).describe('true, without refraction'),
    sunAzimuth_deg: z.number().min(-360).max(720),
    azimuth_deg: z.number().min(-360).max(720),
    tilt_deg: z.number().min(0).max(180).describe('90 = wall'),
    directNormal_W_m2: radiation,
    diffuseHorizontal_W_m2: radiation,
    globalHorizontal_W_m2: radiation,
    extraterrestrialNormal_W_m2: z.number().gt(0),
    albedo: z.number().min(0).max(1).default(0.2),
    sky: z.enum(['perez', 'isotropic', 'hay-davies']).default('perez'),
    relativeAirMass: z.number().gt(0).optional().describe('worked out from the altitude when not given'),
  }),
  run: (given) => irradianceOnFacade(given),
});
