import type { Plan } from '#planning';

const MOST = 8;

/** The design day of each building in the plan, where film does less than its sheet says, and lines that are looked at twice. */
export function energyText(plan: Plan): string[] {
  const { buildings, options, glass } = plan.energy;
  const peaks = buildings.map((b) => `  ${b.building}: ${b.dwellings === 1 ? '1 planned dwelling takes' : `${String(b.dwellings)} planned dwellings together take`} ${b.asFound_kW.toFixed(1)} kW at ${String(b.hour)}:00 on the design day (${b.dryBulb_degC.toFixed(1)} °C), ${b.filmed_kW.toFixed(1)} kW with the film${b.isHumid ? '; humid climate: rooms may get damper if the machine just runs less' : ''}`);
  const lines = options.filter((o) => o.phase !== null);
  const inPlan = new Set(lines.map((o) => o.option));
  const poor = new Map(glass.filter((g) => g.misleads && inPlan.has(g.option)).map((g) => [`${g.film} on ${g.glazing}`, g.survives]));
  const outside = lines.flatMap((o) => o.warnings.filter((w) => !w.startsWith('Humid')).map((w) => `  ${o.dwelling}: ${w}`));
  return [
    ...(peaks.length === 0 ? [] : ['Peak of the planned dwellings, shown and not paid for:', ...peaks, '']),
    ...(poor.size === 0 ? [] : [`The film's sheet would mislead: of the cut it states on single clear glass, less is left on ${[...poor].map(([what, share]) => `${what.replace(/^(.*?) on /, '')}, film ${what.split(' on ')[0] ?? ''}: ${(share * 100).toFixed(0)} %`).join('; ')}.`, '']),
    ...(outside.length === 0 ? [] : ['Outside what published cases found, look again:', ...outside.slice(0, MOST), ...(outside.length > MOST ? [`  … and ${String(outside.length - MOST)} more on the sheet Energy`] : []), '']),
  ];
}
