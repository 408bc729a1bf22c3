import fc from 'fast-check';
import type { TariffText } from '../portfolio/index.js';
import { readTariff, tariffClock, tariffDateFindings } from './index.js';

const everyHour = (period: number): number[][] => Array.from({ length: 12 }, () => Array<number>(24).fill(period));
const text = (more: object): TariffText =>
  ({ label: 't', clock: 'standard', energyratestructure: [[{ rate: 0.1 }]], energyweekdayschedule: everyHour(0), energyweekendschedule: everyHour(0), ...more });
const findingsOf = (more: object) => readTariff(text(more)).findings;
const found = (more: object) => findingsOf(more).map(({ weight, place }) => `${weight} ${place}`);

describe('a tariff as it was written', () => {
  it('a clean text has no finding', () => {
    expect(readTariff(text({}))).toMatchObject({ findings: [], usable: true });
  });

  it.each([
    ['no price at all', { energyratestructure: undefined }, 'error /energyratestructure'],
    ['a period without a price', { energyratestructure: [[]] }, 'error /energyratestructure/0'],
    ['a price in words', { energyratestructure: [[{ rate: 'cheap' }]] }, 'error /energyratestructure/0/0/rate'],
    ['an end in the middle left out', { energyratestructure: [[{ rate: 0.1 }, { rate: 0.2 }]] }, 'error /energyratestructure/0/0/max'],
    ['steps that overlap', { energyratestructure: [[{ rate: 0.1, max: 500 }, { rate: 0.2, max: 400 }, { rate: 0.3 }]] }, 'error /energyratestructure/0/1/max'],
    ['an end on the last step', { energyratestructure: [[{ rate: 0.1, max: 500 }]] }, 'warning /energyratestructure/0/0/max'],
    ['a very large end on the last step', { energyratestructure: [[{ rate: 0.1, max: 1e9 }]] }, 'note /energyratestructure/0/0/max'],
    ['a unit that is not read', { energyratestructure: [[{ rate: 0.1, max: 5, unit: 'kWh/kW' }, { rate: 0.2 }]] }, 'error /energyratestructure/0/0/unit'],
    ['eleven months', { energyweekdayschedule: everyHour(0).slice(1) }, 'error /energyweekdayschedule/11'],
    ['thirteen months', { energyweekdayschedule: [...everyHour(0), Array(24).fill(0)] }, 'error /energyweekdayschedule'],
    ['a day of 25 hours', { energyweekendschedule: everyHour(0).map((row, month) => (month === 4 ? [...row, 0] : row)) }, 'error /energyweekendschedule/4'],
    ['a period that does not exist', { energyweekendschedule: everyHour(0).map((row, month) => (month === 6 ? row.map(() => 2) : row)) }, 'error /energyweekendschedule/6'],
    ['no weekends', { energyweekendschedule: undefined }, 'warning /energyweekendschedule'],
    ['a fixed charge below zero', { fixedchargefirstmeter: -3 }, 'error /fixedchargefirstmeter'],
    ['a fixed charge without its unit', { fixedchargefirstmeter: 3 }, 'note /fixedchargeunits'],
    ['a minimum for the year', { mincharge: 100, minchargeunits: '$/year' }, 'error /minchargeunits'],
    ['no clock', { clock: undefined }, 'note /clock'],
    ['a clock of another kind', { clock: 'sundial' }, 'error /clock'],
    ['daylight time without days', { clock: 'daylight' }, 'note /daylightfirstday'],
    ['daylight time with one day', { clock: 'daylight', daylightfirstday: '03-11' }, 'error /daylightfirstday'],
    ['a day that is not in the calendar', { clock: 'daylight', daylightfirstday: '02-30', daylightlastday: '10-01' }, 'error /daylightfirstday'],
    ['a demand charge that looks back', { lookbackpercent: 0.8 }, 'warning /lookbackpercent'],
    ['months of a flat demand charge left out', { flatdemandstructure: [[{ rate: 5 }], [{ rate: 6 }]] }, 'error /flatdemandmonths'],
    ['a period no hour uses', { energyratestructure: [[{ rate: 0.1 }], [{ rate: 0.2 }]] }, 'note /energyratestructure/1'],
  ])('%s is found', (_, more, expected) => {
    expect(found(more)).toContain(expected);
  });

  it('a gap names the month and the hour it begins at', () => {
    const [gap] = findingsOf({ energyweekdayschedule: everyHour(0).map((row, month) => (month === 6 ? row.slice(0, 20) : row)) });
    expect(gap?.seen).toBe('gap: July has no price from 20:00 to 24:00');
  });

  it('a text with an error is not billed with', () => {
    const tariff = readTariff(text({ energyratestructure: [[{ rate: 'cheap' }]] }));
    expect(tariff.usable).toBe(false);
    expect(() => tariffClock(tariff)).toThrow('/energyratestructure/0/0/rate');
  });

  it('fields it does not read stay in the text', () => {
    expect(readTariff(text({ eiaid: 42 })).text).toMatchObject({ eiaid: 42 });
  });

  it('an adjustment alone is a price', () => {
    expect(readTariff(text({ energyratestructure: [[{ adj: 0.02 }]] }))).toMatchObject({ usable: true, energy: [[{ price_cents: 2 }]] });
  });

  it('never throws, whatever stands in the fields', () => {
    const fields = ['label', 'name', 'energyratestructure', 'energyweekdayschedule', 'energyweekendschedule', 'demandratestructure', 'demandweekdayschedule', 'flatdemandstructure', 'flatdemandmonths', 'fixedchargefirstmeter', 'fixedchargeunits', 'mincharge', 'minchargeunits', 'clock', 'dgrules', 'daylightfirstday', 'startdate'];
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...fields), fc.jsonValue()), (junk) => {
        const tariff = readTariff(text(junk));
        expect(tariff.usable).toBe(tariff.findings.every((finding) => finding.weight !== 'error'));
        tariffDateFindings([text(junk), text({})]);
      }),
      { numRuns: 300 },
    );
  });
});

describe('versions of a tariff', () => {
  const version = (startdate: unknown, enddate: unknown): TariffText => text({ startdate, enddate });

  it('that follow each other day by day have no finding', () => {
    expect(tariffDateFindings([version('2026-01-01', '2026-05-31'), version('2026-06-01', null), text({ label: 'other', startdate: '2026-03-01' })])).toEqual([]);
  });

  it('a week without a price is a gap with its days', () => {
    const [gap] = tariffDateFindings([version('2026-06-08', null), version(null, '2026-05-31')]);
    expect(gap).toMatchObject({ weight: 'error', place: '/0', seen: 'gap: t has no price from 2026-06-01 to 2026-06-07' });
  });

  it('two prices at once are an overlap with its days', () => {
    const [overlap] = tariffDateFindings([version('2026-01-01', '2026-06-30'), version('2026-06-15', '2026-12-31')]);
    expect(overlap?.seen).toBe('overlap: t has two prices from 2026-06-15 to 2026-06-30');
  });

  it('two versions without dates overlap all along', () => {
    expect(tariffDateFindings([version(null, null), version(null, null)])[0]?.seen).toBe('overlap: t has two prices from its start to its end');
  });

  it('a date that cannot be read is said, and seconds since 1970 are read', () => {
    expect(tariffDateFindings([version('last spring', null)])[0]).toMatchObject({ place: '/0/startdate' });
    expect(tariffDateFindings([version(1_767_225_600, 1_780_185_600), version('2026-06-01', null)])).toEqual([]);
  });
});
