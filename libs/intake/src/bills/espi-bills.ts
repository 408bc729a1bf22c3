import type { Meter } from '#calc';
import type { InventoryFile } from '../files/inventory-file.js';
import type { Finding, FindingList } from '../finding.js';
import type { Placed } from '../gathered.js';
import type { BillLine } from '../tables/bill-table.js';
import { BrokenXml, readEspiFeed, type EspiFeed, type EspiLocalTime } from './espi-feed.js';
import { espiBlocks, espiDays, type EspiPeriods } from './espi-periods.js';
import { espiSeries, type EspiSeries } from './espi-series.js';
import { localDays, type LocalDays } from './local-days.js';

/** How a file of readings becomes bills. */
export interface EspiAsk {
  /** Meters that may be meant, with the time zone of their building in hours east of UTC. */
  readonly meters: readonly (Pick<Meter, 'id' | 'usagePoint'> & { readonly timeZone_h: number | null })[];
  /** The meter the whole file is of, named by hand. */
  readonly meter: string | null;
  readonly by: 'day' | 'block';
  readonly findings: FindingList;
}

type Told = Pick<Finding, 'severity' | 'code' | 'expected' | 'whatToDo'> & { readonly row?: number | null; readonly column?: string | null; readonly value?: string | null };
type Say = (told: Told) => void;

const tail = (href: string): string => /[^/]+\/UsagePoint\/[^/]+$/.exec(href)?.[0] ?? href;

function meterOf(point: EspiFeed['usagePoints'][number], ask: EspiAsk, points: number): string | null {
  if (ask.meter !== null) return points === 1 ? ask.meter : null;
  const names = new Set([point.title, point.href, tail(point.href), point.id].filter((name) => name !== ''));
  return ask.meters.find(({ id, usagePoint }) => names.has(id) || (usagePoint !== null && names.has(usagePoint)))?.id ?? null;
}

function calendarOf(feed: EspiFeed, meter: string, at: { readonly ask: EspiAsk; readonly say: Say }): LocalDays | null {
  const told = feed.localTimes.at(-1);
  if (told !== undefined) return localDays(told);
  const zone_h = at.ask.meters.find(({ id }) => id === meter)?.timeZone_h ?? null;
  if (zone_h === null) {
    at.say({ severity: 'error', code: 'local-time-missing', value: meter, expected: 'LocalTimeParameters, or the time zone of the building', whatToDo: 'fill in time_zone_h of the building: without it no reading can be put on its day' });
    return null;
  }
  at.say({ severity: 'warning', code: 'local-time-assumed', value: meter, expected: 'LocalTimeParameters with the daylight rules', whatToDo: `days of the building's standard time are taken, ${zone_h} h from UTC all year` });
  const zone: EspiLocalTime = { tzOffset_s: zone_h * 3600, dstOffset_s: 0, dstStartRule: null, dstEndRule: null };
  return localDays(zone);
}

const spanText = ({ firstDay, lastDay }: { readonly firstDay: string; readonly lastDay: string }): string => (firstDay === lastDay ? firstDay : `${firstDay} to ${lastDay}`);

function sayPeriods(of: EspiPeriods, meter: string, say: Say): void {
  for (const gap of of.incomplete) say({ severity: 'warning', row: gap.line, code: 'readings-incomplete', value: `${meter}: ${spanText(gap)}`, expected: 'readings that fill the whole day', whatToDo: 'left out: part of a day is not its use. Send a file that holds the rest' });
  for (const { line, day } of of.twice) say({ severity: 'warning', row: line, code: 'readings-differ', value: `${meter}: ${day}`, expected: 'each moment once', whatToDo: 'two readings of one moment say two things; the day is left out' });
}

function linesOf(series: EspiSeries, ask: EspiAsk, at: { readonly feed: EspiFeed; readonly file: string; readonly say: Say }): Placed<BillLine>[] {
  const { usagePoint } = series;
  const points = at.feed.usagePoints.length;
  const meter = meterOf(usagePoint, ask, points);
  if (meter === null) {
    const name = usagePoint.title === '' ? tail(usagePoint.href) : usagePoint.title;
    at.say({ severity: 'error', row: usagePoint.line, code: 'usage-point-unknown', value: name, expected: 'a meter with this usage_point in meters.csv', whatToDo: ask.meter === null ? 'write it there, or name the meter of the file with --meter' : `the file holds ${points} usage points, so one --meter cannot name them all` });
    return [];
  }
  const days = calendarOf(at.feed, meter, { ask, say: at.say });
  if (days === null) return [];
  const found = ask.by === 'day' ? espiDays(series, days) : espiBlocks(series, days);
  sayPeriods(found, meter, at.say);
  return found.periods.map((period) => {
    const row = { file: at.file, row: period.line };
    return { row, record: { meter, firstDay: period.firstDay, lastDay: period.lastDay, use_kWh: period.use_kWh, peak_kW: period.peak_kW, amount_cents: null, estimated: period.estimated, inventoryRow: row } };
  });
}

/** Bills of a file of readings in the open energy-usage form. Money in such a file is left alone: it is what the hours cost, not the bill. */
export async function espiBills(file: InventoryFile, ask: EspiAsk): Promise<{ readonly lines: readonly Placed<BillLine>[]; readonly rowsRead: number; readonly readable: boolean }> {
  const say: Say = ({ row = null, column = null, value = null, ...told }) => ask.findings.add({ file: file.name, row, column, value, ...told });
  let feed: EspiFeed;
  try {
    feed = await readEspiFeed(file);
  } catch (fault) {
    if (!(fault instanceof BrokenXml)) throw fault;
    say({ severity: 'error', row: fault.line, code: 'xml-broken', expected: 'an XML file of readings', whatToDo: `nothing of the file was taken (${fault.message}); ask for it again` });
    return { lines: [], rowsRead: 0, readable: false };
  }
  const { series, leftOut } = espiSeries(feed);
  for (const { line, what } of leftOut) say({ severity: 'warning', row: line, code: 'readings-left-out', value: what, expected: 'watt-hours delivered in each interval', whatToDo: 'left out; nothing of it counts as use' });
  if (series.length === 0) say({ severity: 'error', code: 'readings-missing', expected: 'interval readings of a usage point', whatToDo: 'the file holds none that can be used; ask for interval data' });
  return { lines: series.flatMap((of) => linesOf(of, ask, { feed, file: file.name, say })), rowsRead: feed.blocks.reduce((sum, { readings }) => sum + readings.length, 0), readable: true };
}
