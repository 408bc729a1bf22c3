import type { UsePart } from '#calc';
import type { MeterFit } from '#planning';
import { counted } from './said.js';

const whole = (value: number): string => Math.round(value).toLocaleString('en-US');
const part = (name: string, of: UsePart): string => `${name} ${whole(of.kWh)} ± ${whole(of.standardError_kWh)}`;
const degrees = (value: number | null): string => (value === null ? 'none' : `${value.toFixed(1)} °C`);

function splitLines(fit: MeterFit): string[] {
  const { split } = fit;
  if ('why' in split) return [`  no split: ${split.why}`];
  const { fit: model } = split;
  return [
    `  ${part('base load', split.base)}, ${part('cooling', split.cooling)}, ${part('heating', split.heating)}; ${whole(split.total_kWh)} kWh a typical year (± one standard error)`,
    `  ${model.model}: ${model.base_kWh_day.toFixed(2)} kWh a day; ${model.cooling_kWh_dayK.toFixed(3)} kWh a day and K above ${degrees(model.coolingBalance_degC)}; ${model.heating_kWh_dayK.toFixed(3)} below ${degrees(model.heatingBalance_degC)}`,
    `  R² ${model.r2.toFixed(3)}, CV(RMSE) ${(model.cvRmse * 100).toFixed(1)} %, NMBE ${(model.nmbe * 100).toFixed(2)} %; ${counted(split.periods, 'bill')} of ${counted(split.days, 'day')}`,
    ...split.tried.filter((t) => t.why !== null).map((t) => `  not taken: ${t.model}${t.r2Adjusted === null ? '' : `, adjusted R² ${t.r2Adjusted.toFixed(3)}`}: ${t.why ?? ''}`),
    ...(split.seesBase ? [] : ['  every bill holds cooling: base load is at most, cooling at least, what stands here']),
    ...(split.tellsCooling ? [] : ['  cooling does not stand out of its own error']),
  ];
}

/** Split of each meter with its model and errors, the bills used, and those left out with the reason. */
export function fitText(fits: readonly MeterFit[]): string {
  if (fits.length === 0) return 'No bills are kept.';
  return fits
    .flatMap((fit) => [
      `${fit.meter} (${fit.building}, ${counted(fit.dwellings, 'dwelling')})`,
      ...splitLines(fit),
      `  ${fit.weather}`,
      `  used: ${fit.used.length === 0 ? 'none' : `${fit.used[0]!.firstDay} to ${fit.used.at(-1)!.lastDay}, ${counted(fit.used.length, 'bill')}`}${fit.gaps > 0 ? `; ${counted(fit.gaps, 'gap')}, nothing filled in` : ''}`,
      ...fit.leftOut.map((l) => `  left out: ${l.firstDay} to ${l.lastDay}, ${l.use_kWh.toFixed(0)} kWh: ${l.why}`),
    ])
    .join('\n');
}
