import { openCatalogue } from '#catalogue';
import type { Dwelling, Portfolio, TariffText } from '#calc';
import { twoDwellings } from '../../../../test/portfolios/two-dwellings.js';
import { knownPortfolio } from './known-portfolio.js';
import { defaultsOf } from '../job/plan-job.js';

const defaultOf = defaultsOf(openCatalogue());
const everyHour = Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => 0));
const tariff: TariffText = { label: 'FLAT', energyratestructure: [[{ rate: 0.19 }]], energyweekdayschedule: everyHour, energyweekendschedule: everyHour, fixedchargefirstmeter: 9, fixedchargeunits: '$/month', clock: 'standard' };

/** The one dwelling AA/001 of the made-up portfolio, with a change. */
function known(change: Partial<Dwelling> = {}, of: Partial<Portfolio> = {}) {
  const dwellings = twoDwellings.dwellings.slice(0, 1).map((d) => ({ ...d, ...change }));
  const result = knownPortfolio({ ...twoDwellings, tariffs: [tariff], dwellings, dwellingMeters: twoDwellings.dwellingMeters.slice(0, 1), ...of }, defaultOf);
  return { ...result, dwelling: result.dwellings[0], assumedField: (field: string) => result.assumed.find((a) => a.field === field) };
}

describe('a blank of a dwelling', () => {
  it('is filled by the assumption and noted with its source', () => {
    const { dwelling, assumedField } = known({ coolingSetPoint_degC: null });
    const fallback = defaultOf<number>('coolingSetPoint_degC');
    expect(dwelling?.coolingSetPoint_degC).toBe(fallback.value);
    expect(assumedField('cooling set point')).toMatchObject({ subject: 'AA', value: String(fallback.value), unit: fallback.unit, source: fallback.source });
  });

  it('is not noted where the value is given', () => {
    const { dwelling, assumedField } = known({ coolingSetPoint_degC: 23 });
    expect(dwelling?.coolingSetPoint_degC).toBe(23);
    expect(assumedField('cooling set point')).toBeUndefined();
  });

  it('is taken from the plan type before any assumption', () => {
    const { dwelling, assumedField } = known({ ceilingHeight_m: null });
    expect(dwelling?.ceilingHeight_m).toBe(2.44);
    expect(assumedField('ceiling height')).toBeUndefined();
  });

  it('of a plant known by nothing leaves a dwelling that can be computed: kind and efficiency assumed, capacity not limited', () => {
    const { dwelling, assumedField } = known({ plant: { kind: null, ratedCapacity_W: null, efficiency: null, age_yr: null, replacementYear: null, efficiencyAfter: null } });
    expect(dwelling).toMatchObject({ plantKind: defaultOf<string>('coolingKind').value, plantCapacity_W: null });
    expect(dwelling?.plantNow.value).toBeGreaterThan(0);
    expect(dwelling?.meter.id).toBe('AA/M1');
    expect(assumedField('cooling kind')).toBeDefined();
    expect(assumedField('year the cooling plant is replaced')).toMatchObject({ value: String(dwelling?.plantReplacementYear) });
  });

  it('of the year a plant is replaced is not asked where the survey gives it', () => {
    const { dwelling, assumedField } = known();
    expect(dwelling?.plantReplacementYear).toBe(2028);
    expect(assumedField('year the cooling plant is replaced')).toBeUndefined();
  });

  it('of floor area cannot be filled: the dwelling is not computed and says what to give', () => {
    const { dwellings, notComputed } = known({ floorArea_m2: null, planType: null });
    expect(dwellings).toEqual([]);
    expect(notComputed).toMatchObject([{ dwelling: 'AA/001', why: expect.stringContaining('floor area') as string }]);
  });
});

describe('a meter', () => {
  it('is billed by its tariff', () => {
    const { dwelling, findings } = known();
    expect(dwelling?.meter.tariff).toBe(tariff);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
  });

  it('with a tariff that cannot be billed with is planned at the assumed flat price, and the error names the tariff and the place', () => {
    const { dwelling, findings, assumedField } = known({}, { tariffs: [{ ...tariff, energyweekdayschedule: [[0]] }] });
    const price = defaultOf<number>('electricity_cents_kWh').value;
    expect(dwelling?.meter.tariff).toMatchObject({ label: 'ASSUMED', energyratestructure: [[{ rate: price / 100 }]] });
    expect(assumedField('price of electricity')).toMatchObject({ value: String(price) });
    expect(findings.filter((f) => f.severity === 'error')).toMatchObject([{ subject: 'FLAT', text: expect.stringContaining('/energyweekdayschedule') as string }]);
  });

  it('says nothing of a wrong tariff that no meter is on', () => {
    expect(known({}, { tariffs: [tariff, { ...tariff, label: 'OTHER', energyratestructure: [] }] }).findings).toEqual([]);
  });

  it('is assumed to be the dwelling\'s own where none is named', () => {
    const { dwelling } = known({}, { dwellingMeters: [] });
    expect(dwelling?.meter).toMatchObject({ dwellings: ['AA/001'], tariff: { label: 'ASSUMED' } });
  });
});

describe('what a survey says of air, thermostat, ducts and age', () => {
  it('takes the word for draughts before the year it was built', () => {
    const buildings = twoDwellings.buildings.map((b) => ({ ...b, airtightness: 'leaky' as const }));
    expect(known({}, { buildings }).dwelling?.airChange_1_h).toBe(defaultOf<number>('airChange.leaky').value);
    expect(known().dwelling?.airChange_1_h).toBe(defaultOf<number>('airChange.before-1980').value);
  });

  it('sets the thermostat by the hour, heating never above cooling', () => {
    const setbacks = { cooling: { setPoint_degC: 29, hours: [8, 9] }, heating: { setPoint_degC: 40, hours: [0] } };
    const { dwelling } = known({ setbacks, heatingSetPoint_degC: 20 });
    expect(dwelling?.setPoints_degC?.cooling.slice(7, 11)).toEqual([24.4, 29, 29, 24.4]);
    expect(dwelling?.setPoints_degC?.heating.slice(0, 2)).toEqual([24.4, 20]);
    expect(known().dwelling?.setPoints_degC).toBeNull();
  });

  it('loses nothing in ducts or with age unless the survey and the plan say so', () => {
    const { dwelling, assumedField } = known();
    expect(dwelling).toMatchObject({ ductEfficiency: 1, plantAgeing: null });
    expect(assumedField('share of the cooling that the ducts bring to the rooms')).toBeDefined();
    const aged = known({ plant: { ...twoDwellings.dwellings[0]!.plant, ductEfficiency: 0.8 } }, { settings: { ...twoDwellings.settings, plantAgeing: 'kept' } });
    expect(aged.dwelling).toMatchObject({ ductEfficiency: 0.8, plantAgeing: { age_yr: 17, loss_1_yr: 0.01 } });
    expect(aged.findings.some((f) => f.text.includes('plant ageing is on'))).toBe(true);
  });
});
