import { openCatalogue } from '#catalogue';
import { bodyOf, dwellingLoads, facadeSky, facadeSun_W, glazingOptics, plantOnWeather, prepareDrive, runPlant, shadeOnFacade, skyYear, sunYear, windowGain_W_m2 } from '#calc';
import { plainYear } from './plain-year.bench.js';

// Short bursts in turn: a machine shared with other work leaves some of them undisturbed, and the processor time counts only our own.
const rounds = 60;
const fastPerRound = 100;
const plainPerRound = 1;

const catalogue = openCatalogue();
const weather = catalogue.climates.year(catalogue.climates.nearest(33.4, -112).climate.key);
const sun = sunYear(weather.site);
const sky = skyYear(sun, weather);
const optics = glazingOptics(catalogue.glazing.list()[0]!.makeUp);
const open = { width_m: 1.2, height_m: 1.5, overhangDepth_m: 0, overhangGap_m: 0, finDepth_m: 0, finGap_m: 0, reveal_m: 0, horizon: [] };
const gains = [0, 90, 180, 270].map((azimuth_deg) => {
  const facade = { azimuth_deg, tilt_deg: 90 };
  return windowGain_W_m2({ optics, sky: facadeSky({ sun, weather, ...facade, albedo: 0.2, sky }), shade: shadeOnFacade(sun, facade, open) });
});
const day = <T>(of: (hour: number) => T): T[] => Array.from({ length: 24 }, (_, hour) => of(hour));
const schedules = { internal_W: day((h) => (h < 8 || h > 17 ? 350 : 200)), heatingSetPoint_degC: 20, coolingSetPoint_degC: day((h) => (h < 8 || h > 17 ? 25 : 27)) };
const body = bodyOf({
  floorArea_m2: 75, thermalClass: 'medium', ceilingHeight_m: 2.5, exposedWall_m2: 40, wallU_W_m2K: 0.6, exposedRoof_m2: 0, roofU_W_m2K: 0.3, airChange_1_h: 0.5,
  windows: [{ area_m2: 12, uFactor_W_m2K: optics.uFactor_W_m2K }],
});
const plant = { kind: 'single-speed', performance: catalogue.plants.performance('single-speed'), ratedCapacity_W: 9000, efficiency: { scale: 'seer', value: 14 } } as const;

// What options of a dwelling share is prepared once; what a dwelling-year costs is the rest.
const solar_W = new Float64Array(8760);
const drive = { ...prepareDrive({ outdoor_degC: weather.outdoor_degC, solar_W, ...schedules }), solar_W };
const on = plantOnWeather(plant, weather);
const buffers = { heating_W: new Float64Array(8760), cooling_W: new Float64Array(8760) };
const electricity = new Float64Array(8760);
const facadesOf = (n: number) => gains.map((gain_W_m2, i) => ({ glass_m2: 1 + i + (n % 100) / 100, gain_W_m2 }));

function fastYear(n: number) {
  facadeSun_W(facadesOf(n), solar_W);
  const loads = dwellingLoads(body, drive, buffers);
  return { loads, year: runPlant(on, { sensibleLoad_W: loads.cooling_W }, electricity) };
}
const plainOf = (n: number) => plainYear({ body, facades: facadesOf(n), outdoor_degC: weather.outdoor_degC, ...schedules, plant });

/** Dwelling-years per second of the clock and of the processor's own time. */
function perSecond(times: number, work: (n: number) => void): { clock: number; processor: number } {
  const [started, used] = [performance.now(), process.cpuUsage()];
  for (let n = 0; n < times; n++) work(n);
  const clock = (1000 * times) / (performance.now() - started);
  const { user, system } = process.cpuUsage(used);
  return { clock, processor: (1e6 * times) / (user + system) };
}

const away = (got: number, wanted: number) => Math.abs(got / wanted - 1);
const [fast, plain] = [fastYear(17), plainOf(17)];
const worst = Math.max(
  away(fast.loads.cooling_kWh, plain.cooling_kWh), away(fast.loads.heating_kWh, plain.heating_kWh), away(fast.loads.peakCooling_W, plain.peakCooling_W),
  away(fast.year.electricity_total_kWh, plain.electricity_kWh), away(fast.year.runHours_h, plain.runHours_h),
);
for (let warm = 0; warm < 5; warm++) {
  perSecond(fastPerRound, fastYear);
  perSecond(plainPerRound, plainOf);
}
type Rates = ReturnType<typeof perSecond>;
const rates: { fast: Rates; plain: Rates }[] = [];
for (let round = 0; round < rounds; round++) rates.push({ fast: perSecond(fastPerRound, fastYear), plain: perSecond(plainPerRound, plainOf) });
const sorted = (name: 'fast' | 'plain', by: keyof Rates) => rates.map((rate) => rate[name][by]).sort((a, b) => a - b);
const median = (name: 'fast' | 'plain', by: keyof Rates) => sorted(name, by)[rounds >> 1]!;
const best = (name: 'fast' | 'plain') => sorted(name, 'clock')[rounds - 1]!;
const figure = (value: number) => value.toFixed(0).padStart(7);
const line = (name: 'fast' | 'plain', title: string) => {
  console.log(`${title.padEnd(30)} best ${figure(best(name))}   median by the clock ${figure(median(name, 'clock'))}   median by processor time ${figure(median(name, 'processor'))}`);
};
console.log(`Dwelling-years per second on one core: 4 facades, hourly gains, set-point schedule, plant, peaks; ${weather.label}.`);
line('fast', 'as the plan runs them');
line('plain', 'plain twin, nothing prepared');
console.log(`ratio of the best ${(best('fast') / best('plain')).toFixed(1)}; largest relative difference of the two ${worst.toExponential(1)} (limit 1e-9)`);
process.exitCode = worst < 1e-9 ? 0 : 1;
