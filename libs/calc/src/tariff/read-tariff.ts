import type { TariffText } from '../portfolio/index.js';
import { readSchedule } from './read-schedule.js';
import { centsOfDollars, readSteps } from './read-steps.js';
import type { DaylightDates, FlatDemand, Netting, PeriodDemand, Tariff, TariffFinding, TariffTime } from './tariff.js';
import { MONTH_DAYS } from './calendar.js';

type Fields = Readonly<Record<string, unknown>>;

function amount(text: Fields, field: string, findings: TariffFinding[]): number {
  const value = text[field];
  if (value === undefined || value === null) return 0;
  if (typeof value === 'number' && Number.isFinite(value) && value >= 0) return centsOfDollars(value);
  findings.push({ weight: 'error', place: `/${field}`, seen: JSON.stringify(value), expected: 'dollars, not below zero' });
  return 0;
}

interface Charge {
  readonly cents: number;
  readonly per: 'month' | 'day';
}

function charge(text: Fields, fields: { readonly value: string; readonly unit: string; readonly yearly: boolean }, findings: TariffFinding[]): Charge {
  const cents = amount(text, fields.value, findings);
  const unit = text[fields.unit];
  const words = typeof unit === 'string' ? unit.toLowerCase().replace(/\s+/g, '') : unit;
  if (words === undefined || words === null) {
    if (cents > 0) findings.push({ weight: 'note', place: `/${fields.unit}`, seen: 'nothing', expected: '"$/month" or "$/day"; a month is assumed' });
    return { cents, per: 'month' };
  }
  if (words === '$/month') return { cents, per: 'month' };
  if (words === '$/day') return { cents, per: 'day' };
  if (words === '$/year' && fields.yearly) return { cents: cents / 12, per: 'month' };
  findings.push({ weight: 'error', place: `/${fields.unit}`, seen: JSON.stringify(unit), expected: '"$/month" or "$/day"' });
  return { cents, per: 'month' };
}

function monthDay(value: unknown): readonly [number, number] | null {
  const parts = typeof value === 'string' ? /^(\d{2})-(\d{2})$/.exec(value) : null;
  if (parts === null) return null;
  const month = Number(parts[1]) - 1;
  const day = Number(parts[2]);
  return day >= 1 && day <= (MONTH_DAYS[month] ?? 0) ? [month, day] : null;
}

function daylightDates(text: Fields, findings: TariffFinding[]): DaylightDates | null {
  const first = monthDay(text['daylightfirstday']);
  const last = monthDay(text['daylightlastday']);
  if (first !== null && last !== null) return { first, last };
  const none = text['daylightfirstday'] === undefined && text['daylightlastday'] === undefined;
  findings.push({
    weight: none ? 'note' : 'error',
    place: '/daylightfirstday',
    seen: none ? 'nothing' : JSON.stringify([text['daylightfirstday'], text['daylightlastday']]),
    expected: 'daylightfirstday and daylightlastday as MM-DD; without both, the second Sunday of March to the first Sunday of November',
  });
  return null;
}

function tariffTime(text: Fields, findings: TariffFinding[]): TariffTime {
  const { clock } = text;
  if (clock === 'standard') return { kind: 'standard' };
  if (clock === 'daylight') return { kind: 'daylight', dates: daylightDates(text, findings) };
  const none = clock === undefined || clock === null;
  findings.push({ weight: none ? 'note' : 'error', place: '/clock', seen: none ? 'nothing' : JSON.stringify(clock), expected: '"standard" or "daylight"; standard time is assumed' });
  return { kind: 'standard' };
}

function netting(text: Fields, findings: TariffFinding[]): Netting {
  const { dgrules } = text;
  if (dgrules === undefined || dgrules === null) return 'hour';
  const words = typeof dgrules === 'string' ? dgrules.toLowerCase() : '';
  if (words === 'net metering') return 'month';
  if (words === 'net billing hourly' || words === 'net billing instantaneous') return 'hour';
  findings.push({ weight: 'warning', place: '/dgrules', seen: JSON.stringify(dgrules), expected: '"Net Metering" or "Net Billing Hourly"; exported kWh are set off hour by hour' });
  return 'hour';
}

function periodDemand(text: Fields, findings: TariffFinding[]): PeriodDemand | null {
  const structure = text['demandratestructure'];
  if (structure === undefined || structure === null) return null;
  const steps = readSteps(structure, { unit: 'kW', place: '/demandratestructure', findings });
  return { steps, table: readSchedule(text, 'demand', { periods: steps.length, findings }) };
}

function flatDemand(text: Fields, findings: TariffFinding[]): FlatDemand | null {
  const structure = text['flatdemandstructure'];
  if (structure === undefined || structure === null) return null;
  const steps = readSteps(structure, { unit: 'kW', place: '/flatdemandstructure', findings });
  const given = text['flatdemandmonths'];
  if (given === undefined && steps.length === 1) return { steps, months: new Uint8Array(12) };
  const months: readonly unknown[] = Array.isArray(given) ? given : [];
  const right = months.length === 12 && months.every((period) => Number.isInteger(period) && (period as number) >= 0 && (period as number) < steps.length);
  if (!right) findings.push({ weight: 'error', place: '/flatdemandmonths', seen: JSON.stringify(given ?? null), expected: `12 periods from 0 to ${steps.length - 1}` });
  return { steps, months: right ? Uint8Array.from(months as number[]) : new Uint8Array(12) };
}

// Rules of some tariffs that move the bill and are not billed here; said, never passed over.
const NOT_BILLED: readonly (readonly [string, string])[] = [
  ['lookbackpercent', 'a demand charge that looks back on earlier months is billed on the month’s own peak'],
  ['demandratchetpercentage', 'a demand ratchet is billed on the month’s own peak'],
  ['coincidentratestructure', 'a charge at the hour of the system’s peak is left out'],
  ['annualmincharge', 'a minimum for the year is left out'],
];

function leftOut(text: Fields): TariffFinding[] {
  return NOT_BILLED.flatMap(([field, expected]): TariffFinding[] => {
    const value = text[field];
    const nothing = value === undefined || value === null || value === 0 || (Array.isArray(value) && value.every((each) => each === 0));
    return nothing ? [] : [{ weight: 'warning', place: `/${field}`, seen: JSON.stringify(value), expected }];
  });
}

function unusedPeriods(energy: readonly unknown[], table: Tariff['energyTable']): TariffFinding[] {
  const used = new Set([...table.weekday, ...table.weekend]);
  return energy.flatMap((_, period): TariffFinding[] =>
    used.has(period) ? [] : [{ weight: 'note', place: `/energyratestructure/${period}`, seen: 'no hour of the year', expected: 'a period that some hour uses' }],
  );
}

/**
 * A tariff in the field names of the open rate database, made ready to bill with.
 *
 *   price of a step = rate + adj, dollars to cents; `max` is cumulative in the month, or per day × days of the month
 *
 * Nothing a person wrote makes it throw: gaps, overlaps, unknown periods and units become findings with their place, and a
 * tariff with an error is marked as not usable. Fields it does not read stay in `text`.
 *
 * @param text the tariff as it came in; money in dollars
 * @returns the tariff with its findings; prices in cents
 * @source field names: U.S. Utility Rate Database (open data), response fields version 7; look-back and netting words from memory
 */
export function readTariff(text: TariffText): Tariff {
  const findings: TariffFinding[] = [];
  const energy = readSteps(text.energyratestructure, { unit: 'kWh', place: '/energyratestructure', findings });
  const energyTable = readSchedule(text, 'energy', { periods: energy.length, findings });
  const fixed = charge(text, { value: 'fixedchargefirstmeter', unit: 'fixedchargeunits', yearly: true }, findings);
  const minimum = charge(text, { value: 'mincharge', unit: 'minchargeunits', yearly: false }, findings);
  const demand = periodDemand(text, findings);
  const flat = flatDemand(text, findings);
  const time = tariffTime(text, findings);
  const net = netting(text, findings);
  findings.push(...leftOut(text), ...unusedPeriods(energy, energyTable));
  return {
    label: text.label,
    name: text.name ?? text.label,
    energy,
    energyTable,
    demand,
    flatDemand: flat,
    fixed_cents: fixed.cents,
    fixedPer: fixed.per,
    minimum_cents: minimum.cents,
    minimumPer: minimum.per,
    time,
    netting: net,
    findings,
    usable: findings.every((finding) => finding.weight !== 'error'),
    text,
  };
}
