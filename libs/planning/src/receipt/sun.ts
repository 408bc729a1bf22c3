import { monthStarts } from '#calc';
import type { Plan } from '../plan/plan.js';
import { facadeKey } from '../sky/sky-on-facades.js';
import type { Figure, ReceiptAt } from './figure.js';
import { digits } from './receipt-numbers.js';
import { type Receipt, type ReceiptStep, workedOut } from './receipt.js';
import { buildingRow } from './survey-rows.js';

const VERTICAL_deg = 90;
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const sum_kWh = (hours: Float64Array, from: number, to: number): number => {
  let sum = 0;
  for (let h = from; h < to; h++) sum += hours[h]!;
  return sum / 1000;
};

async function sunReceipt(of: Pick<Figure, 'id' | 'title'> & { readonly building: string; readonly azimuth_deg: number }, at: ReceiptAt): Promise<Receipt> {
  const survey = await at.survey();
  const sky = survey.skies.sites.get(survey.skies.siteOf.get(of.building) ?? '')?.facades.get(facadeKey(of.azimuth_deg, VERTICAL_deg));
  const months = sky === undefined ? [] : MONTHS.map((label, m): ReceiptStep => {
    const [beam, dome, ground] = [sky.beam_W_m2, sky.sky_W_m2, sky.ground_W_m2].map((part) => sum_kWh(part, monthStarts[m]!, monthStarts[m + 1]!)) as [number, number, number];
    return { label, substituted: `beam ${digits(beam, 2)} + sky ${digits(dome, 2)} + ground ${digits(ground, 2)} = ${digits(beam + dome + ground, 2)} kWh/m²`, value: beam + dome + ground, unit: 'kWh/m2' };
  });
  const total = months.reduce((sum, s) => sum + s.value, 0);
  const weather = at.plan.weather.find((w) => w.building === of.building);
  const albedo = at.catalogue.assumptions.value('albedo');
  return {
    figure: of.id,
    title: of.title,
    value: sky === undefined ? 'not worked' : total,
    unit: 'kWh/m2',
    formula: 'sun on a wall of this bearing in a year = Σ hours (beam + sky + ground), with nothing standing in front of it',
    steps: months,
    rows: buildingRow(at.plan, of.building, ['latitude', 'longitude', 'climate', 'weather_file']),
    assumptions: [
      ...(weather === undefined ? [] : [{ name: 'weather', value: weather.label, unit: '', source: weather.source, basis: 'published' as const }]),
      { name: 'albedo of the ground', value: String(albedo.value), unit: albedo.unit, source: albedo.source, basis: albedo.basis },
    ],
    compute: sky === undefined ? null : { kernel: 'facade-year', input: { weather: survey.weatherOf(of.building), facades: [{ azimuth_deg: of.azimuth_deg, tilt_deg: VERTICAL_deg }], albedo: albedo.value }, result: [{ pointer: '/facades/0/annual_kWh_m2/total', times: 1 }], words: 'annual_kWh_m2.total' },
    computeWhy: sky === undefined ? 'the survey kept now has no window on this side any more' : null,
    worked: workedOut(sky === undefined ? 'not worked' : total, sky === undefined ? 'not worked' : total, ''),
    see: [],
  };
}

/** Sun on each side that the plan films. */
export function sunFigures(plan: Plan): Figure[] {
  const sides = new Map<string, { readonly building: string; readonly azimuth_deg: number }>();
  for (const line of plan.lines) for (const { azimuth_deg } of line.windows) sides.set(`sun/${line.building}/${digits(azimuth_deg, 2)}`, { building: line.building, azimuth_deg });
  return [...sides].map(([id, side]) => {
    const about = { id, title: `Sun of a year on a wall of ${side.building} at ${digits(side.azimuth_deg, 2)}°` };
    return { ...about, receipt: (at) => sunReceipt({ ...about, ...side }, at) };
  });
}
