import { existsSync, readFileSync } from 'node:fs';
import { readTemperatures, type TemperaturesByPlace } from './day-weather.js';

/** The daily temperatures that lie beside a survey as `temperatures.csv`; null where there is no such file. */
export function temperaturesBeside(resolve: (file: string) => string): TemperaturesByPlace | null {
  const path = resolve('temperatures.csv');
  return existsSync(path) ? readTemperatures(readFileSync(path, 'utf8')) : null;
}
