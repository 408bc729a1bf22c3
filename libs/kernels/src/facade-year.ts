import { facadeSky, MONTH_DAYS, skyYear, sunYear, type FacadeSky } from '#calc';
import { z } from 'zod';
import { defineKernel } from './kernel.js';
import { weatherInput } from './weather-input.js';

const input = z.strictObject({
  weather: weatherInput,
  facades: z.array(z.strictObject({ azimuth_deg: z.number().min(-360).max(720), tilt_deg: z.number().min(0).max(180).default(90) })).min(1),
  albedo: z.number().min(0).max(1).default(0.2),
  hours: z.array(z.int().min(0).max(8759)).optional().describe('hours of the year, counted from 0, whose parts are wanted'),
});

const kWh = (values: Float64Array, from = 0, to = values.length): number => {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i] ?? 0;
  return sum / 1000;
};

function sums(sky: FacadeSky): object {
  const parts = [sky.beam_W_m2, sky.sky_W_m2, sky.ground_W_m2];
  const [beam = 0, dome = 0, ground = 0] = parts.map((part) => kWh(part));
  let from = 0;
  const monthly_kWh_m2 = MONTH_DAYS.map((days) => {
    const to = from + days * 24;
    const sum = parts.reduce((all, part) => all + kWh(part, from, to), 0);
    from = to;
    return sum;
  });
  return { annual_kWh_m2: { beam, sky: dome, ground, total: beam + dome + ground }, monthly_kWh_m2 };
}

function hourParts(sky: FacadeSky, hour: number): object {
  const [beam_W_m2 = 0, sky_W_m2 = 0, ground_W_m2 = 0] = [sky.beam_W_m2[hour], sky.sky_W_m2[hour], sky.ground_W_m2[hour]];
  return { hour, beam_W_m2, sky_W_m2, ground_W_m2, total_W_m2: beam_W_m2 + sky_W_m2 + ground_W_m2 };
}

export const kernel = defineKernel({
  name: 'facade-year',
  about: 'A year of beam, sky and ground light on facades from hourly weather, nothing standing in front of them.',
  input,
  run: ({ weather: of, facades, albedo, hours }, room) => {
    const weather = room.weather(of);
    const sun = sunYear(weather.site);
    const sky = skyYear(sun, weather);
    return {
      weather: { label: weather.label, source: weather.source, ...weather.site },
      facades: facades.map((facade) => {
        const light = facadeSky({ sun, weather, sky, albedo, ...facade });
        return { ...facade, ...sums(light), ...(hours === undefined ? {} : { hours: hours.map((hour) => hourParts(light, hour)) }) };
      }),
    };
  },
});
