import { diffuseShare, dewPointOf_degC, sunYear, type Site } from '#calc';
import { momentText } from './calendar.js';
import type { WeatherFinding } from './finding.js';
import type { Column, StationHead, YearColumns } from './columns.js';

/** Longest gap in hours that a straight line may bridge. */
const LONGEST_GAP_H = 6;

/** Bridges gaps in a column by straight lines, December running on into January; returns the count filled and the longest gap. */
function bridge(values: Float64Array): { filled: number; longest: number; first: number } {
  const first = values.findIndex((value) => Number.isNaN(value));
  const anchor = values.findIndex((value) => !Number.isNaN(value));
  if (first < 0 || anchor < 0) return { filled: 0, longest: first < 0 ? 0 : values.length, first };
  let filled = 0;
  let longest = 0;
  for (let step = 1; step < values.length; step++) {
    const at = (anchor + step) % values.length;
    if (!Number.isNaN(values[at]!)) continue;
    let gap = 1;
    while (Number.isNaN(values[(at + gap) % values.length]!)) gap++;
    const before = values[(at - 1 + values.length) % values.length]!;
    const after = values[(at + gap) % values.length]!;
    for (let k = 0; k < gap; k++) values[(at + k) % values.length] = before + ((after - before) * (k + 1)) / (gap + 1);
    filled += gap;
    longest = Math.max(longest, gap);
    step += gap - 1;
  }
  return { filled, longest, first };
}

function gapFinding(name: Column, gap: { filled: number; longest: number; first: number }): WeatherFinding[] {
  if (gap.longest === 0) return [];
  const where = `${name} has no value in ${gap.filled === 0 ? 'any hour' : `${gap.filled} hours, first on ${momentText(gap.first)}`}`;
  return gap.longest > LONGEST_GAP_H
    ? [{ severity: 'refused', about: 'missing', row: null, text: `${where}; gaps of up to ${gap.longest} h are too long to bridge (at most ${LONGEST_GAP_H} h). Fill the column or use another file.` }]
    : [{ severity: 'filled', about: 'missing', row: null, text: `${where}; filled by a straight line from the hours beside.` }];
}

/** Fills short gaps of temperature, humidity and wind; a dew point is taken from the relative humidity where only that is given. */
export function fillGaps(columns: YearColumns, head: Pick<StationHead, 'label'>): WeatherFinding[] {
  const { dryBulb_degC, dewPoint_degC, relativeHumidity, wind_m_s } = columns;
  const findings = gapFinding('dryBulb_degC', bridge(dryBulb_degC));
  if (findings.some((finding) => finding.severity === 'refused')) return findings;
  let fromHumidity = 0;
  for (let i = 0; i < 8760; i++) {
    if (Number.isNaN(dewPoint_degC[i]!) && relativeHumidity[i]! > 0) {
      dewPoint_degC[i] = dewPointOf_degC(dryBulb_degC[i]!, Math.min(1, relativeHumidity[i]!));
      fromHumidity++;
    }
  }
  if (fromHumidity > 0) findings.push({ severity: 'filled', about: 'missing', row: null, text: `Dew point of ${fromHumidity} hours was worked out from the relative humidity.` });
  findings.push(...gapFinding('dewPoint_degC', bridge(dewPoint_degC)));
  const wind = bridge(wind_m_s);
  if (wind.longest === 8760) {
    wind_m_s.fill(0);
    findings.push({ severity: 'doubtful', about: 'missing', row: null, text: `${head.label} gives no wind; the year counts as calm.` });
  } else if (wind.longest > 0) {
    findings.push({ severity: 'filled', about: 'missing', row: null, text: `wind_m_s has no value in ${wind.filled} hours; filled by a straight line from the hours beside.` });
  }
  return findings;
}

/**
 * Completes global, direct and diffuse light: two known give the third (G = D + N cos z, sun at half past); the global light alone is split
 * by Erbs; a dark hour is dark. What is left in sunlit hours refuses the file.
 */
export function fillRadiation(columns: YearColumns, site: Site): WeatherFinding[] {
  const { global_W_m2: global, direct_W_m2: direct, diffuse_W_m2: diffuse } = columns;
  if (![global, direct, diffuse].some((column) => column.some((value) => Number.isNaN(value)))) return [];
  const sun = sunYear(site);
  const counts = { third: 0, split: 0, lost: 0 };
  let firstLost = -1;
  for (let i = 0; i < 8760; i++) {
    const [noG, noN, noD] = [Number.isNaN(global[i]!), Number.isNaN(direct[i]!), Number.isNaN(diffuse[i]!)];
    if (!noG && !noN && !noD) continue;
    const up = Math.sin((sun.altitude_deg[i]! * Math.PI) / 180);
    if (up <= 0) {
      if (noG) global[i] = noD ? 0 : diffuse[i]!;
      if (noN) direct[i] = 0;
      if (noD) diffuse[i] = global[i]!;
      continue;
    }
    if (noG && (noN || noD)) {
      counts.lost++;
      if (firstLost < 0) firstLost = i;
      continue;
    }
    if (noG) global[i] = diffuse[i]! + direct[i]! * up;
    else if (noN && noD) {
      diffuse[i] = global[i]! * diffuseShare(global[i]! / (sun.extraterrestrialNormal_W_m2[i]! * Math.max(up, 0.065)));
      direct[i] = beamOf(global[i]! - diffuse[i]!, up, sun.extraterrestrialNormal_W_m2[i]!);
    } else if (noD) diffuse[i] = Math.max(0, global[i]! - direct[i]! * up);
    else direct[i] = beamOf(global[i]! - diffuse[i]!, up, sun.extraterrestrialNormal_W_m2[i]!);
    if (noN && noD) counts.split++;
    else counts.third++;
  }
  return radiationFindings(counts, firstLost);
}

/** Beam facing the sun from beam on level ground; near the horizon no more than a clear day could bring. */
const beamOf = (level_W_m2: number, up: number, outside_W_m2: number): number => Math.min(0.85 * outside_W_m2, Math.max(0, level_W_m2) / Math.max(up, 0.02));

function radiationFindings(counts: { third: number; split: number; lost: number }, firstLost: number): WeatherFinding[] {
  const findings: WeatherFinding[] = [];
  const say = (severity: WeatherFinding['severity'], text: string) => findings.push({ severity, about: 'missing', row: null, text });
  if (counts.third > 0) say('filled', `One of global, direct and diffuse light is missing in ${counts.third} sunlit hours; worked out from the other two.`);
  if (counts.split > 0) say('doubtful', `Only global light is given in ${counts.split} sunlit hours; split into direct and diffuse by the correlation of Erbs (1982), which moves the yearly light on a facade by up to 10 %.`);
  if (counts.lost > 0) say('refused', `Light is missing in ${counts.lost} sunlit hours, first on ${momentText(firstLost)}. Use another file.`);
  return findings;
}
