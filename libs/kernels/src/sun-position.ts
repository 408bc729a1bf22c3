import { sunPosition } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';

export const kernel = defineKernel({
  name: 'sun-position',
  about: 'Where the sun stands at an instant: true and apparent altitude, azimuth clockwise from true north.',
  input: z.strictObject({
    utc: z.iso.datetime({ offset: true }).describe('instant with Z or an offset, for example 2003-10-17T19:30:30Z'),
    latitude_deg: z.number().min(-90).max(90).describe('north positive'),
    longitude_deg: z.number().min(-180).max(180).describe('east positive'),
  }),
  run: ({ utc, latitude_deg, longitude_deg }) => sunPosition(Date.parse(utc), latitude_deg, longitude_deg),
});
