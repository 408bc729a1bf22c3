import { Readable } from 'node:stream';
import fc from 'fast-check';
import { espiReadings } from '../../../../test/reference/espi-readings.js';
import { fileOfText, type InventoryFile } from '../files/inventory-file.js';
import { FindingList } from '../finding.js';
import { espiBills, type EspiAsk } from './espi-bills.js';
import { localDays } from './local-days.js';

const US = { start: '360E2000', end: 'B40E2000' };

interface Reading {
  readonly start: number;
  readonly value: number;
  readonly quality?: number;
}
interface Made {
  readonly tz_s?: number;
  readonly daylight?: boolean;
  readonly step?: number;
  readonly power?: number;
  readonly uom?: number;
  readonly flow?: number;
  readonly title?: string;
  readonly prologue?: string;
}

function block(readings: readonly Reading[], { step = 900, number = 1 }: { readonly step?: number; readonly number?: number } = {}): string {
  const one = ({ start, value, quality }: Reading): string =>
    `<IntervalReading>${quality === undefined ? '' : `<ReadingQuality><quality>${quality}</quality></ReadingQuality>`}<timePeriod><duration>${step}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading>`;
  return `<entry><link rel="self" href="RetailCustomer/1/UsagePoint/1/MeterReading/1/IntervalBlock/${number}"/><content><IntervalBlock xmlns="http://naesb.org/espi"><interval><duration>${readings.length * step}</duration><start>${readings[0]?.start}</start></interval>${readings.map(one).join('\n')}</IntervalBlock></content></entry>`;
}

function feed(blocks: string, { tz_s = -21_600, daylight = true, step = 900, power = 0, uom = 72, flow = 1, title = 'QA-M1', prologue = '' }: Made = {}): string {
  const rules = daylight ? `<dstEndRule>${US.end}</dstEndRule><dstOffset>3600</dstOffset><dstStartRule>${US.start}</dstStartRule>` : '';
  return `<?xml version="1.0" encoding="UTF-8"?>${prologue}
<feed xmlns="http://www.w3.org/2005/Atom">
<entry><link rel="self" href="RetailCustomer/1/UsagePoint/1"/><title>${title}</title><content><UsagePoint xmlns="http://naesb.org/espi"><ServiceCategory><kind>0</kind></ServiceCategory></UsagePoint></content></entry>
<entry><link rel="self" href="LocalTimeParameters/1"/><content><LocalTimeParameters xmlns="http://naesb.org/espi">${rules}<tzOffset>${tz_s}</tzOffset></LocalTimeParameters></content></entry>
<entry><link rel="self" href="ReadingType/1"/><content><ReadingType xmlns="http://naesb.org/espi"><accumulationBehaviour>4</accumulationBehaviour><flowDirection>${flow}</flowDirection><intervalLength>${step}</intervalLength><powerOfTenMultiplier>${power}</powerOfTenMultiplier><uom>${uom}</uom></ReadingType></content></entry>
<entry><link rel="self" href="RetailCustomer/1/UsagePoint/1/MeterReading/1"/><link rel="related" href="ReadingType/1"/><content><MeterReading xmlns="http://naesb.org/espi"/></content></entry>
${blocks}
</feed>`;
}

const every = (start: number, count: number, value: number): Reading[] => Array.from({ length: count }, (_, i) => ({ start: start + i * 900, value }));

async function read(text: string, ask: Partial<EspiAsk> = {}) {
  const findings = new FindingList();
  const file = fileOfText('readings.xml', text);
  const { lines } = await espiBills(file, { meters: [{ id: 'QA-M1', usagePoint: null, timeZone_h: -6 }], meter: null, by: 'day', findings, ...ask });
  return { bills: lines.map(({ record }) => record), findings: findings.all(), codes: findings.all().map(({ code }) => code) };
}

const utc = (...at: [number, number, number, number]): number => Date.UTC(at[0], at[1] - 1, at[2], at[3]) / 1000;

describe('interval readings as bills', () => {
  it.each(espiReadings.rows)('puts the readings of $place on their day', async ({ given, expect: wanted }) => {
    const { tzOffset_s, intervalLength_s: step, firstStart_s, blockDuration_s, values_Wh } = given;
    const readings = Array.from({ length: blockDuration_s / step }, (_, i) => ({ start: firstStart_s + i * step, value: values_Wh[i] ?? 0 }));
    const { bills, codes } = await read(feed(block(readings, { step }), { tz_s: tzOffset_s, daylight: false, step }));
    expect(codes).toEqual([]);
    expect(bills).toHaveLength(1);
    expect(bills[0]).toMatchObject({ firstDay: wanted.firstDay, lastDay: wanted.firstDay, estimated: false });
    expect(Math.abs((bills[0]?.use_kWh ?? 0) * 1000 - wanted.sum_Wh)).toBeLessThanOrEqual(espiReadings.tolerance.abs ?? 0);
    // 331 Wh in a quarter of an hour is the greatest of the eight.
    expect(bills[0]?.peak_kW).toBeCloseTo(1.324, 9);
  });

  it('fills the day of 23 hours with 92 quarters of an hour and the day of 25 with 100', async () => {
    const spring = every(utc(2024, 3, 10, 6), 92, 100);
    const autumn = every(utc(2024, 11, 3, 5), 100, 100);
    const { bills, codes } = await read(feed(block(spring) + block(autumn, { number: 2 })));
    expect(codes).toEqual([]);
    expect(bills.map(({ firstDay, use_kWh }) => [firstDay, use_kWh])).toEqual([['2024-03-10', 9.2], ['2024-11-03', 10]]);
  });

  it('leaves a day out that its readings do not fill, with the day and the line', async () => {
    const { bills, findings } = await read(feed(block([...every(utc(2024, 7, 1, 5), 96, 50), ...every(utc(2024, 7, 2, 5), 40, 50)])));
    expect(bills.map(({ firstDay }) => firstDay)).toEqual(['2024-07-01']);
    expect(findings).toMatchObject([{ code: 'readings-incomplete', value: 'QA-M1: 2024-07-02' }]);
    expect(findings[0]?.row).toBeGreaterThan(100);
  });

  it('reads powers of ten, and marks days of made-up readings estimated', async () => {
    const readings = every(utc(2024, 7, 1, 5), 96, 3).map((each, i) => (i < 20 ? { ...each, quality: 8 } : each));
    const { bills } = await read(feed(block(readings), { power: 2 }));
    expect(bills).toMatchObject([{ use_kWh: 28.8, estimated: true }]);
    expect((await read(feed(block(readings.map(({ start, value }) => ({ start, value })))))).bills).toMatchObject([{ use_kWh: 0.288, estimated: false }]);
  });

  it('takes a block as one bill when asked to', async () => {
    const july = every(utc(2024, 7, 1, 5), 31 * 96, 10);
    const { bills } = await read(feed(block(july)), { by: 'block' });
    expect(bills.map(({ firstDay, lastDay, use_kWh }) => [firstDay, lastDay, use_kWh])).toEqual([['2024-07-01', '2024-07-31', 29.76]]);
  });

  it('takes a reading of a month as a bill of its own', async () => {
    const july: Reading[] = [{ start: utc(2024, 7, 1, 5), value: 812_000 }];
    const { bills } = await read(feed(block(july, { step: 31 * 86_400 }), { step: 31 * 86_400 }));
    expect(bills).toMatchObject([{ firstDay: '2024-07-01', lastDay: '2024-07-31', use_kWh: 812, peak_kW: null }]);
  });

  it('leaves out what is no energy delivered, and says what it is', async () => {
    const day = block(every(utc(2024, 7, 1, 5), 96, 50));
    expect((await read(feed(day, { uom: 38 }))).findings).toMatchObject([{ code: 'readings-missing' }, { code: 'readings-left-out', value: 'readings in unit 38, not watt-hours (72)' }]);
    expect((await read(feed(day, { flow: 19 }))).codes).toEqual(['readings-missing', 'readings-left-out']);
  });

  it('counts a reading that is sent again once, and leaves the day out where the two differ', async () => {
    const day = every(utc(2024, 7, 1, 5), 96, 50);
    expect((await read(feed(block(day) + block(day, { number: 2 })))).bills).toMatchObject([{ use_kWh: 4.8 }]);
    const other = await read(feed(block(day) + block([{ start: day[4]!.start, value: 51 }], { number: 2 })));
    expect([other.bills, other.codes]).toEqual([[], ['readings-differ']]);
  });

  it('asks whose usage point it is, and takes the meter named by hand or by its column', async () => {
    const text = feed(block(every(utc(2024, 7, 1, 5), 96, 50)), { title: 'Dwelling 12B' });
    expect((await read(text)).findings).toMatchObject([{ severity: 'error', code: 'usage-point-unknown', value: 'Dwelling 12B' }]);
    expect((await read(text, { meter: 'QA-M1' })).bills).toHaveLength(1);
    expect((await read(text, { meters: [{ id: 'QA-M1', usagePoint: 'Dwelling 12B', timeZone_h: -6 }] })).bills).toHaveLength(1);
    expect((await read(text, { meters: [{ id: 'QA-M1', usagePoint: '1/UsagePoint/1', timeZone_h: -6 }] })).bills).toHaveLength(1);
  });

  it('refuses a document type, a cut file and bytes that are no text, with the line and nothing taken', async () => {
    const whole = feed(block(every(utc(2024, 7, 1, 5), 96, 50)));
    for (const text of [feed('', { prologue: '\n<!DOCTYPE feed [<!ENTITY a "b">]>' }), whole.slice(0, -40), whole.replace('QA-M1', '&bogus;'), whole.replace('<value>50</value>', '<value>many</value>')]) {
      const { bills, findings } = await read(text);
      expect([bills.length, findings.map(({ code }) => code)]).toEqual([0, ['xml-broken']]);
      expect(findings[0]?.row).toBeGreaterThan(0);
    }
  });

  it('reads the same whatever the pieces it comes in', async () => {
    const bytes = Buffer.from(feed(block(every(utc(2024, 7, 1, 5), 96, 50)), { title: 'Maisonnette à côté' }));
    for (const size of [1, 7, 4096]) {
      const file: InventoryFile = { name: 'r.xml', open: () => Readable.from(Array.from({ length: Math.ceil(bytes.length / size) }, (_, i) => bytes.subarray(i * size, (i + 1) * size))) };
      const { lines } = await espiBills(file, { meters: [], meter: 'QA-M1', by: 'day', findings: new FindingList() });
      expect(lines.map(({ record }) => record.use_kWh)).toEqual([4.8]);
    }
  });
});

describe('days of a place', () => {
  const SYDNEY = { tzOffset_s: 36_000, dstOffset_s: 3600, dstStartRule: 'A40E2000', dstEndRule: '440E3000' };
  const CHICAGO = { tzOffset_s: -21_600, dstOffset_s: 3600, dstStartRule: US.start, dstEndRule: US.end };

  it.each([['America/Chicago', CHICAGO], ['Australia/Sydney', SYDNEY]])('are those of the time-zone database for %s, 2009 to 2036', (zone, local) => {
    const format = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
    const days = localDays(local);
    fc.assert(fc.property(fc.integer({ min: utc(2009, 1, 1, 0), max: utc(2036, 1, 1, 0) }), (at) => days.dayOf(at) === format.format(at * 1000)), { numRuns: 2000 });
  });

  it('are 23, 24 or 25 hours long', () => {
    const days = localDays(CHICAGO);
    expect(['2024-03-10', '2024-07-01', '2024-11-03'].map((day) => days.length_s(day) / 3600)).toEqual([23, 24, 25]);
  });
});
