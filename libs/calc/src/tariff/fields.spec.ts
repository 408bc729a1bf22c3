import type { TariffText } from '../portfolio/index.js';
import { readTariff, tariffDateFindings } from './index.js';

const everyHour = (period: number): number[][] => Array.from({ length: 12 }, () => Array<number>(24).fill(period));
const text = (more: object): TariffText =>
  ({ label: 't', clock: 'standard', energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: everyHour(0), energyweekendschedule: everyHour(0), ...more });
const read = (more: object) => readTariff(text(more));
const found = (more: object) => read(more).findings.map(({ weight, place }) => `${weight} ${place}`);

describe('charges of a month', () => {
  it.each([
    ['a month', { fixedchargefirstmeter: 12, fixedchargeunits: '$/month' }, { fixed_cents: 1200, fixedPer: 'month' }],
    ['a day', { fixedchargefirstmeter: 0.4, fixedchargeunits: '$/day' }, { fixed_cents: 40, fixedPer: 'day' }],
    ['a year, by twelfths', { fixedchargefirstmeter: 120, fixedchargeunits: '$/year' }, { fixed_cents: 1000, fixedPer: 'month' }],
    ['written wide', { fixedchargefirstmeter: 1, fixedchargeunits: ' $ /  Day ' }, { fixed_cents: 100, fixedPer: 'day' }],
    ['nothing', { fixedchargefirstmeter: 0 }, { fixed_cents: 0, fixedPer: 'month' }],
    ['left blank', { fixedchargefirstmeter: null, fixedchargeunits: null }, { fixed_cents: 0, fixedPer: 'month' }],
    ['a least bill a day', { mincharge: 0.5, minchargeunits: '$/day' }, { minimum_cents: 50, minimumPer: 'day' }],
  ])('%s', (_, more, expected) => {
    expect(read(more)).toMatchObject({ ...expected, findings: [], usable: true });
  });

  it.each([
    ['words', { fixedchargefirstmeter: 'ten', fixedchargeunits: '$/month' }, 'error /fixedchargefirstmeter'],
    ['no figure', { mincharge: Number.NaN, minchargeunits: '$/month' }, 'error /mincharge'],
    ['a week', { fixedchargefirstmeter: 1, fixedchargeunits: '$/week' }, 'error /fixedchargeunits'],
    ['a number for a unit', { fixedchargefirstmeter: 1, fixedchargeunits: 7 }, 'error /fixedchargeunits'],
    ['a least bill a year', { mincharge: 1, minchargeunits: '$/year' }, 'error /minchargeunits'],
    ['no unit', { fixedchargefirstmeter: 1, fixedchargeunits: null }, 'note /fixedchargeunits'],
  ])('%s is found', (_, more, expected) => {
    expect(found(more)).toEqual([expected]);
    expect(read(more)).toMatchObject({ fixedPer: 'month', minimumPer: 'month' });
  });
});

describe('what is sent out', () => {
  it.each([
    [undefined, 'hour', []], [null, 'hour', []], ['Net Metering', 'month', []], ['net metering', 'month', []], ['Net Billing Hourly', 'hour', []], ['Net Billing Instantaneous', 'hour', []],
    ['Buy All Sell All', 'hour', ['warning /dgrules']], [3, 'hour', ['warning /dgrules']],
  ])('rule %p nets by the %s', (dgrules, netting, findings) => {
    expect(read({ dgrules }).netting).toBe(netting);
    expect(found({ dgrules })).toEqual(findings);
  });
});

describe('the clock', () => {
  const daylight = (first: unknown, last: unknown) => ({ clock: 'daylight', daylightfirstday: first, daylightlastday: last });
  it.each([
    ['03-11', '11-04', { first: [2, 11], last: [10, 4] }], ['01-31', '12-01', { first: [0, 31], last: [11, 1] }], ['02-28', '10-31', { first: [1, 28], last: [9, 31] }],
  ])('daylight time from %s to %s', (first, last, dates) => {
    expect(read(daylight(first, last))).toMatchObject({ time: { kind: 'daylight', dates }, findings: [] });
  });

  it.each([['3-11'], ['03-1'], ['x03-11'], ['03-11x'], ['ab-11'], ['03-cd'], ['13-01'], ['00-10'], ['03-00'], ['02-29'], ['04-31'], [311], [null]])('a day written %p is found, at either end', (day) => {
    for (const more of [daylight(day, '11-04'), daylight('03-11', day)]) {
      expect(found(more)).toEqual(['error /daylightfirstday']);
      expect(read(more).time).toEqual({ kind: 'daylight', dates: null });
    }
  });

  it('one day alone is an error, none a note', () => {
    expect(found(daylight('03-11', undefined))).toEqual(['error /daylightfirstday']);
    expect(found(daylight(undefined, '11-04'))).toEqual(['error /daylightfirstday']);
    expect(found(daylight(undefined, undefined))).toEqual(['note /daylightfirstday']);
  });

  it('is standard time where nothing is said or nothing known', () => {
    for (const [clock, weight] of [[undefined, 'note'], [null, 'note'], ['sundial', 'error']]) {
      expect(read({ clock })).toMatchObject({ time: { kind: 'standard' }, findings: [{ weight, place: '/clock' }] });
    }
  });
});

describe('charges for peaks', () => {
  const two = [[{ rate: 5 }], [{ rate: 6 }]];
  it('are none where the text has none', () => {
    expect(read({ demandratestructure: null, flatdemandstructure: null })).toMatchObject({ demand: null, flatDemand: null, findings: [] });
  });

  it('of a month hold all year with one price, or month by month', () => {
    expect(read({ flatdemandstructure: [[{ rate: 5 }]] })).toMatchObject({ flatDemand: { steps: [[{ price_cents: 500 }]], months: new Uint8Array(12) }, findings: [] });
    const months = [0, 0, 0, 0, 1, 1, 1, 1, 1, 0, 0, 0];
    expect(read({ flatdemandstructure: two, flatdemandmonths: months })).toMatchObject({ flatDemand: { months: Uint8Array.from(months) }, findings: [] });
    expect(read({ flatdemandstructure: [[{ rate: 5 }]], flatdemandmonths: Array(12).fill(0) }).findings).toEqual([]);
  });

  it.each([
    ['eleven months', Array(11).fill(0)], ['a price that is not there', [2, ...Array<number>(11).fill(0)]], ['a price below the first', [-1, ...Array<number>(11).fill(0)]], ['half a price', [0.5, ...Array<number>(11).fill(0)]],
    ['words', 'summer'], ['nothing', undefined], ['words in the last month', [...Array<number>(11).fill(1), 'x']],
  ])('%s are found', (_, flatdemandmonths) => {
    const tariff = read({ flatdemandstructure: two, flatdemandmonths });
    expect(tariff.findings.map(({ weight, place }) => `${weight} ${place}`)).toEqual(['error /flatdemandmonths']);
    expect(tariff.flatDemand?.months).toEqual(new Uint8Array(12));
    expect(tariff.findings[0]!.expected).toBe('12 periods from 0 to 1');
  });

  it('by hours are read with their own tables', () => {
    const tariff = read({ demandratestructure: two, demandweekdayschedule: everyHour(1), demandweekendschedule: everyHour(0) });
    expect(tariff).toMatchObject({ demand: { steps: [[{ price_cents: 500 }], [{ price_cents: 600 }]], table: { weekday: new Uint8Array(288).fill(1), weekend: new Uint8Array(288) } }, findings: [] });
  });
});

describe('rules that are not billed', () => {
  const fields = ['lookbackpercent', 'demandratchetpercentage', 'coincidentratestructure', 'annualmincharge'];
  it.each(fields)('%s is said where it holds something', (field) => {
    for (const value of [0.8, [0, 0.5], 'some']) expect(found({ [field]: value })).toEqual([`warning /${field}`]);
    for (const value of [undefined, null, 0, [], [0, 0]]) expect(found({ [field]: value })).toEqual([]);
    expect(read({ [field]: 0.8 }).findings[0]!.expected).not.toBe('');
  });
});

it('goes by its name, or its label', () => {
  expect(read({ name: 'Home' })).toMatchObject({ label: 't', name: 'Home' });
  expect(read({})).toMatchObject({ label: 't', name: 't' });
});

describe('prices by steps', () => {
  const steps = (...tiers: object[]) => read({ energyratestructure: [tiers] });
  const foundIn = (...tiers: object[]) => steps(...tiers).findings.map(({ weight, place }) => `${weight} ${place}`);
  const at = (t: number, field: string) => `error /energyratestructure/0/${t}/${field}`;

  it('rate and adjustment add up, either alone is a price, an export price is kept apart', () => {
    expect(steps({ rate: 0.1, adj: 0.02, max: 300, sell: 0.05 }, { adj: 0.3, max: null, sell: null }).energy).toEqual([[
      { upTo: 300, daily: false, price_cents: 12, sell_cents: 5 }, { upTo: Infinity, daily: false, price_cents: 30, sell_cents: null },
    ]]);
    expect(foundIn({ rate: 0.1, adj: null })).toEqual([]);
    expect(foundIn({ adj: 0.1 })).toEqual([]);
    expect(foundIn({})).toEqual([at(0, 'rate')]);
    expect(foundIn({ rate: null, adj: 0.1 })).toEqual([at(0, 'rate')]);
    expect(foundIn({ rate: 'x', adj: 0.1 })).toEqual([at(0, 'rate')]);
  });

  it.each([['x'], [true], [Number.NaN], [Infinity]])('a price of %p is found in each of its fields', (value) => {
    expect(foundIn({ rate: value })).toEqual([at(0, 'rate')]);
    expect(foundIn({ rate: 0.1, adj: value })).toEqual([at(0, 'adj')]);
    expect(foundIn({ rate: 0.1, sell: value })).toEqual([at(0, 'sell')]);
  });

  it.each([[0], [-5], ['x'], [Number.NaN]])('an upper end of %p is found', (max) => {
    expect(foundIn({ rate: 0.1, max }, { rate: 0.2 })).toContain(at(0, 'max'));
    expect(foundIn({ rate: 0.1, max })).toEqual([at(0, 'max')]);
  });

  it('ends must rise, and be all of the month or all of the day', () => {
    expect(foundIn({ rate: 0.1, max: 5 }, { rate: 0.2, max: 5 }, { rate: 0.3 })).toEqual([at(1, 'max')]);
    expect(foundIn({ rate: 0.1, max: 5, unit: 'kWh daily' }, { rate: 0.2, max: 400, unit: 'kWh' }, { rate: 0.3 })).toEqual([at(1, 'unit')]);
    expect(foundIn({ rate: 0.1, max: 5, unit: 'kWh daily' }, { rate: 0.2, unit: 'kWh' })).toEqual([]);
    expect(foundIn({ rate: 0.1, max: 5, unit: ' KWH   Daily ' }, { rate: 0.2, max: 9, unit: 'kwh daily' }, { rate: 0.3, unit: null })).toEqual([]);
    expect(foundIn({ rate: 0.1, unit: 7 })).toEqual([at(0, 'unit')]);
    expect(steps({ rate: 0.1, unit: 'gallons' }).energy[0]![0]!.daily).toBe(false);
  });

  it('an end on the last step is a note from a million on', () => {
    expect(foundIn({ rate: 0.1, max: 999_999 })).toEqual(['warning /energyratestructure/0/0/max']);
    expect(foundIn({ rate: 0.1, max: 1e6 })).toEqual(['note /energyratestructure/0/0/max']);
  });

  it('a step or a period that is none is found where it stands', () => {
    for (const tier of [null, 5, 'x']) expect(read({ energyratestructure: [[tier]] }).findings[0]).toMatchObject({ weight: 'error', place: '/energyratestructure/0/0/rate' });
    for (const structure of [[], 'x', null]) expect(read({ energyratestructure: structure }).findings[0]).toMatchObject({ weight: 'error', place: '/energyratestructure' });
    for (const period of [[], 'x', null]) expect(read({ energyratestructure: [[{ rate: 0.1 }], period] })).toMatchObject({ usable: false, energy: [[{ price_cents: 10 }], []] });
    expect(read({ energyratestructure: undefined })).toMatchObject({ energy: [], findings: expect.arrayContaining([expect.objectContaining({ seen: 'nothing' })]) as unknown });
    expect(read({ energyratestructure: [[{ rate: 'x' }]] }).findings[0]!.seen).toBe('"x"');
  });
});

describe('tables of months and hours', () => {
  const two = [[{ rate: 0.1 }], [{ rate: 0.2 }]];
  const withCell = (month: number, hour: number, value: unknown) => everyHour(1).map((row, m) => (m === month ? row.map((each, h) => (h === hour ? value : each)) : row));
  const weekday = (table: unknown, more: object = {}) => read({ energyratestructure: two, energyweekdayschedule: table, energyweekendschedule: everyHour(0), ...more });

  it.each([[2], [-1], [0.5], ['1'], [null]])('a period %p is found with month and hour, and the first stands in', (value) => {
    const tariff = weekday(withCell(2, 7, value));
    expect(tariff.findings).toMatchObject([{ weight: 'error', place: '/energyweekdayschedule/2', seen: `March, 7:00: period ${JSON.stringify(value)}`, expected: 'a period from 0 to 1' }]);
    expect([tariff.energyTable.weekday[2 * 24 + 7], tariff.energyTable.weekday[2 * 24 + 8]]).toEqual([0, 1]);
  });

  it('several are named once each', () => {
    const table = withCell(0, 3, 5).map((row, m) => (m === 0 ? row.map((each, h) => (h === 4 ? 5 : h === 9 ? 'x' : each)) : row));
    expect(weekday(table).findings[0]!.seen).toBe('January, 3:00, 4:00, 9:00: period 5, "x"');
  });

  it.each(['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'].map((name, month) => [name, month] as const))('a gap in %s is named', (name, month) => {
    const short = everyHour(1).map((row, m) => (m === month ? row.slice(0, 20) : row));
    // An hour without a price has no period either.
    expect(weekday(short).findings[0]).toMatchObject({ weight: 'error', place: `/energyweekdayschedule/${month}`, seen: `gap: ${name} has no price from 20:00 to 24:00` });
    expect(weekday(everyHour(1).map((row, m) => (m === month ? 'x' : row))).findings).toMatchObject([{ weight: 'error', place: `/energyweekdayschedule/${month}`, seen: `gap: nothing for ${name}` }]);
    expect(weekday(everyHour(1).map((row, m) => (m === month ? [...row, 9] : row))).findings).toMatchObject([{ seen: `overlap: ${name} has 25 hours` }]);
  });

  it('none at all is a note with one price and an error with two', () => {
    const none = { energyweekdayschedule: undefined, energyweekendschedule: undefined };
    expect(read(none)).toMatchObject({ findings: [{ weight: 'note', place: '/energyweekdayschedule' }], energyTable: { weekday: new Uint8Array(288), weekend: new Uint8Array(288) }, usable: true });
    expect(read({ ...none, energyratestructure: two })).toMatchObject({ usable: false, energyTable: { weekday: new Uint8Array(288) } });
    expect(read({ energyweekdayschedule: undefined }).findings.map(({ place }) => place)).toContain('/energyweekdayschedule/0');
    expect(read({ energyratestructure: two, energyweekdayschedule: everyHour(1), energyweekendschedule: undefined }).energyTable.weekend).toEqual(new Uint8Array(288).fill(1));
  });
});

describe('versions of a tariff', () => {
  const version = (startdate: unknown, enddate: unknown): TariffText => text({ startdate, enddate });
  const seen = (...versions: TariffText[]) => tariffDateFindings(versions).map((each) => `${each.place} ${each.seen}`);

  it('may meet by a day, not share one', () => {
    expect(seen(version('2026-01-01', '2026-05-31'), version('2026-06-01', ''))).toEqual([]);
    expect(seen(version('2026-01-01', '2026-06-01'), version('2026-06-01', null))).toEqual(['/1 overlap: t has two prices from 2026-06-01 to 2026-06-01']);
    expect(seen(version('2026-01-01', '2026-05-30'), version('2026-06-01', null))).toEqual(['/1 gap: t has no price from 2026-05-31 to 2026-05-31']);
  });

  it('are taken in the order of their days, and a short one inside a long one hides no gap', () => {
    expect(seen(version('2026-07-01', '2026-12-31'), version('2026-01-01', '2026-03-31'), version('2026-04-01', '2026-06-30'))).toEqual([]);
    expect(seen(version('2026-01-01', '2026-12-31'), version('2026-02-01', '2026-02-28'), version('2027-01-01', null))).toEqual(['/1 overlap: t has two prices from 2026-02-01 to 2026-02-28']);
    expect(seen(version('2026-01-01', '2026-12-31'), version('2026-01-01', '2026-01-31'), version('2026-02-01', '2026-02-28'))).toHaveLength(2);
  });

  it('of one day are a day long, and one that ends before it starts is said', () => {
    expect(seen(version('2026-03-01', '2026-03-01'), version('2026-03-02', null))).toEqual([]);
    for (const wrong of [version('2026-03-02', '2026-03-01'), version('2026-03-02', 'soon'), version('x2026-03-01', null), version(true, null), version('2026-13-01', null), version(1e10, null)]) {
      expect(tariffDateFindings([wrong])).toMatchObject([{ weight: 'error', place: '/0/startdate' }]);
    }
  });

  it('seconds since 1970 hold for the day they fall in, the last second of it too', () => {
    // 1 June 2026 is day 20605: 20 605 × 86 400 = 1 780 272 000.
    expect(seen(version('2026-01-01', 1_780_271_999), version('2026-06-01', null))).toEqual([]);
    expect(seen(version('2026-01-01', 1_780_272_000), version('2026-06-01', null))).toHaveLength(1);
  });
});
