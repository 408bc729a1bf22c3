import { join } from 'node:path';
import { type BodyWindow, dwellingLoads, heatingUse, latentLoad_W, runPlant, type TariffText, yearCost_cents } from '#calc';
import { openCatalogue } from '#catalogue';
import { portfolioOf, readInventory } from '#intake';
import fc from 'fast-check';
import { buildingWeather } from '../job/building-weather.js';
import { planPortfolio } from '../plan-portfolio.js';
import { workersHere } from '../workers-here.js';
import { dwellingOptions } from './dwelling-options.js';
import { asFound, dressedWith, type Dressing, dwellingBench, optionBench } from './dwelling-run.js';
import type { DwellingTask } from './dwelling-task.js';
import type { OptionRoom } from './option-room.js';
import { machinesOf } from './plant-run.js';
import { zoneBody } from './zone.js';

const table = (of: (h: number) => number): number[][] => Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, h) => of(h)));
const tariff = (label: string, more: object): TariffText => ({ label, clock: 'standard', energyratestructure: [[{ rate: 0.14, max: 500 }, { rate: 0.24 }]], energyweekdayschedule: table(() => 0), energyweekendschedule: table(() => 0), ...more });
const tariffs = [
  tariff('BLOCKS', {}),
  tariff('PERIODS', { energyratestructure: [[{ rate: 0.12 }], [{ rate: 0.31 }]], energyweekdayschedule: table((h) => (h >= 14 && h < 20 ? 1 : 0)) }),
  tariff('DEMAND', { flatdemandstructure: [[{ rate: 14 }]], flatdemandmonths: Array.from({ length: 12 }, () => 0) }),
];

/** Tasks of the example with what they share, caught on their way to the computation. */
async function exampleTasks(): Promise<{ readonly tasks: readonly DwellingTask[]; readonly room: OptionRoom }> {
  const catalogue = openCatalogue();
  const portfolio = portfolioOf(await readInventory(join(process.cwd(), 'test/inventories/ok/two-buildings')), '2026-07-01');
  const { weather } = buildingWeather(portfolio.buildings, catalogue, (file) => file);
  let caught: { readonly tasks: readonly DwellingTask[]; readonly room: OptionRoom } | undefined;
  const dwellingOptions: typeof workersHere.dwellingOptions = (tasks, room) => {
    caught = { tasks, room: { ...room, tariffs: new Map(tariffs.map((t) => [t.label, t])) } };
    return Promise.reject(new Error('caught'));
  };
  const job = { portfolio, catalogue, weather, id: 'P', revision: 1, parent: null, madeOn: '2026-07-01', program: 'test', inputHash: 'none', findings: [] };
  await expect(planPortfolio(job, { ...workersHere, dwellingOptions })).rejects.toThrow('caught');
  return caught!;
}

/** The plain twin: window by window, the machine run for every span, every hour of the bill added up. */
function plainSavings(task: DwellingTask, room: OptionRoom): { readonly cooling_cents: number; readonly addedHeating_cents: number }[][] {
  const bench = optionBench(room);
  const at = dwellingBench(task, room);
  const d = task.dwelling;
  const loadsOf = (dressing: Dressing) => {
    const solar_W = at.zone.opaque_W.slice();
    const windows: BodyWindow[] = [];
    for (const panel of task.panels) {
      const { gain_W_m2, uFactor_W_m2K, roomEmissivity } = bench.gains.of(at.zone.site, panel, dressing(panel));
      windows.push({ area_m2: panel.glass_m2, uFactor_W_m2K, roomEmissivity });
      gain_W_m2.forEach((W, h) => (solar_W[h] = solar_W[h]! + panel.glass_m2 * d.useFactor * W));
    }
    return dwellingLoads(zoneBody(task, at.zone, windows), { ...at.drive, solar_W });
  };
  const heatOf = (heating_W: Float64Array) => {
    const use = d.heatingKind === 'none' ? null : heatingUse({ kind: d.heatingKind, efficiency: d.heatingEfficiency }, heating_W);
    return { hours: use?.electricity_kWh ?? new Float64Array(8760), fuel_cents: (use?.gas_total_kWh ?? 0) * d.heatingFuel_cents_kWh };
  };
  const cost = (cool: Float64Array, heat: Float64Array): number =>
    yearCost_cents(bench.clockOf(d.meter.tariff.label), at.zone.base_kWh.map((base, h) => base + cool[h]! + heat[h]! + (task.others_kWh?.[h] ?? 0)));
  const found = loadsOf(asFound);
  const machines = machinesOf(d, { room, site: at.zone.site, peakSensible_W: found.peakCooling_W });
  const cold = heatOf(found.heating_W);
  return task.sets.map((set) =>
    task.spans.map(({ firstYear, plant }) => {
      const on = machines.of(plant);
      const filmed = loadsOf(dressedWith(set, firstYear));
      const [bare, cut] = [found, filmed].map((loads) => runPlant(on, { sensibleLoad_W: loads.cooling_W, latentLoad_W: latentLoad_W(on, found.cooling_W) }).electricity_kWh);
      const warm = heatOf(filmed.heating_W);
      const coolingOnly = cost(cut!, cold.hours);
      return { cooling_cents: cost(bare!, cold.hours) - coolingOnly, addedHeating_cents: cost(cut!, warm.hours) - coolingOnly + warm.fuel_cents - cold.fuel_cents };
    }),
  );
}

describe('the options of a dwelling', () => {
  it('are those of the plain twin, for any size, set point, heating, machine and tariff', async () => {
    const { tasks, room } = await exampleTasks();
    const bench = optionBench(room);
    const some = fc.record({
      task: fc.constantFrom(...tasks), size: fc.double({ min: 0.3, max: 3, noNaN: true }), setPoint: fc.double({ min: 22, max: 28, noNaN: true }), tariff: fc.constantFrom(...tariffs),
      heatingKind: fc.constantFrom('gas' as const, 'heat-pump' as const, 'electric-resistance' as const, 'none' as const), cop: fc.double({ min: 2, max: 5, noNaN: true }), replaced: fc.boolean(),
    });
    fc.assert(fc.property(some, (x) => {
      const { dwelling } = x.task;
      const task: DwellingTask = {
        ...x.task,
        dwelling: { ...dwelling, coolingSetPoint_degC: x.setPoint, heatingKind: x.heatingKind, plantAfter: { scale: 'cop', value: x.cop }, plantNow: { scale: 'cop', value: 2.7 }, meter: { ...dwelling.meter, tariff: x.tariff } },
        panels: x.task.panels.map((p, i) => ({ ...p, glass_m2: p.glass_m2 * x.size, replacementYear: x.replaced && i === 0 ? 2031 : null })),
        spans: [{ firstYear: 2026, plant: 'present' }, { firstYear: 2029, plant: 'after replacement' }, { firstYear: 2031, plant: 'after replacement' }],
      };
      const plain = plainSavings(task, room);
      dwellingOptions(task, bench).sets.slice(0, task.sets.length).forEach((result, s) => {
        result.spans.forEach((span, i) => {
          // Differences of two bills of some 100,000 cents: 1e-9 of a bill, not of the difference.
          expect(Math.abs(span.cooling_cents - plain[s]![i]!.cooling_cents)).toBeLessThan(1e-6);
          expect(Math.abs(span.addedHeating_cents - plain[s]![i]!.addedHeating_cents)).toBeLessThan(1e-6);
        });
      });
    }), { numRuns: 10 });
  }, 60_000);
});
