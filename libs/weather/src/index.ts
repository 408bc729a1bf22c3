export type { WeatherFinding, WeatherReading } from './finding.js';
export { closureOf, OFFSETS_H, type Closure } from './clock-check.js';
export { readWeatherFile, readWeatherStream, readWeatherText, weatherAndFindings, weatherOf, type AskedWeather } from './weather-file.js';
