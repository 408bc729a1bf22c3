// Tariffs, films, rolls, letters, move-outs, locks and the plan's settings of the Example Portfolio. All figures are made up.

const everyHour = (period) => Array.from({ length: 12 }, () => Array.from({ length: 24 }, () => period));
const lateAfternoon = Array.from({ length: 12 }, () => Array.from({ length: 24 }, (_, hour) => (hour >= 15 && hour < 20 ? 1 : 0)));
const flat = (rates) => ({ energyratestructure: [rates], energyweekdayschedule: everyHour(0), energyweekendschedule: everyHour(0) });
const fixed = (amount) => ({ fixedchargefirstmeter: amount, fixedchargeunits: '$/month', clock: 'standard' });
const timeOfUse = {
  energyratestructure: [[{ rate: 0.12, unit: 'kWh', sell: 0 }], [{ rate: 0.31, unit: 'kWh', sell: 0 }]],
  energyweekdayschedule: lateAfternoon,
  energyweekendschedule: everyHour(0),
};

const TARIFFS = [
  { label: 'FLAT', utility: 'made up', name: 'Flat', sector: 'Residential', ...flat([{ rate: 0.19, unit: 'kWh' }]), ...fixed(12) },
  { label: 'BLOCK', utility: 'made up', name: 'Rising blocks', sector: 'Residential', ...flat([{ rate: 0.14, max: 500, unit: 'kWh' }, { rate: 0.21, max: 1000, unit: 'kWh' }, { rate: 0.27, unit: 'kWh' }]), ...fixed(9) },
  { label: 'TOU', utility: 'made up', name: 'Time of use', sector: 'Residential', ...timeOfUse, ...fixed(15) },
  { label: 'TOU-NET', utility: 'made up', name: 'Time of use, net billing of solar panels', sector: 'Residential', ...timeOfUse, energyratestructure: timeOfUse.energyratestructure.map(([tier]) => [{ ...tier, sell: 0.05 }]), ...fixed(15) },
  {
    label: 'DEMAND', utility: 'made up', name: 'Energy and demand', sector: 'Commercial', ...flat([{ rate: 0.13, unit: 'kWh' }]),
    flatdemandstructure: [[{ rate: 14 }]], flatdemandmonths: Array.from({ length: 12 }, () => 0), ...fixed(60),
  },
];

/** Readable JSON: a month of a schedule on one line. */
export const tariffs = `${JSON.stringify(TARIFFS, null, 2).replace(/\[\s+((?:\d+,\s+)*\d+)\s+\]/g, (_, list) => `[${list.replace(/\s+/g, '').replace(/,/g, ', ')}]`)}\n`;

const quote = { quote_date: '2026-05-04', quote_ends: '2027-06-30', basis: 'assumed', source: 'made up for the Example Portfolio' };
export const films = [
  { film: 'A', film_name: 'Neutral A', film_class: 'neutral', solar_transmittance: 0.4, solar_reflectance_outside: 0.16, solar_reflectance_inside: 0.16, visible_transmittance: 0.45, visible_reflectance_outside: 0.12, visible_reflectance_inside: 0.12, room_emissivity: 0.8, side: 'room', life_yr: 12, may_rotate: 'yes', freight: 85, minimum_order: 500, ...quote },
  { film: 'B', film_name: 'Reflective B', film_class: 'reflective medium', solar_transmittance: 0.24, solar_reflectance_outside: 0.38, solar_reflectance_inside: 0.36, visible_transmittance: 0.3, visible_reflectance_outside: 0.32, visible_reflectance_inside: 0.28, room_emissivity: 0.75, side: 'room', life_yr: 12, may_rotate: 'no', freight: 85, minimum_order: 500, ...quote },
];

// Prices per square foot of roll, chosen once so that what the caps buy is 30 to 50 % of what is eligible and pays; wide rolls cost a little more.
const PRICE_ft2 = { A: 1.4, B: 1.53 };
const WIDTHS = [[36, 1], [48, 1], [60, 1.02], [72, 1.05]];
export const rolls = ['A', 'B'].flatMap((film) =>
  WIDTHS.map(([width_in, dearer]) => ({ roll: `${film}-${width_in}`, film, width_in, length_ft: 100, price: Math.round((PRICE_ft2[film] * width_in * 100 * dearer) / 12 / 5) * 5, in_stock: 0 })),
);

export const consents = [
  { consent: 'ER-GLASS-A', building: 'ER', kind: 'glass maker', glazing: 'single bronze 3/16 in', film: 'A', state: 'given', date: '2026-06-10', reference: 'letter 14' },
  { consent: 'ER-GLASS-B', building: 'ER', kind: 'glass maker', glazing: 'single bronze 3/16 in', film: 'B', state: 'asked', date: '2026-10-20', reference: 'letter 15' },
  { consent: 'ET-BOARD', building: 'ET', kind: 'association', state: 'asked', date: '2028-08-01', reference: 'vote expected at the yearly meeting; application to the board, plan and sample handed in' },
  { consent: 'EH-GLASS-A', building: 'EH', kind: 'glass maker', glazing: 'double clear', film: 'A', state: 'asked', date: '2027-03-01', reference: 'letter 21' },
  { consent: 'EH-GLASS-B', building: 'EH', kind: 'glass maker', glazing: 'double clear', film: 'B', state: 'asked', reference: 'letter 22' },
  { consent: 'EH-02-W04', building: 'EH', dwelling: '02', window: 'W04', kind: 'glass maker', state: 'needed', reference: 'unit in warranty' },
  { consent: 'EH-09-W07', building: 'EH', dwelling: '09', window: 'W07', kind: 'glass maker', state: 'needed', reference: 'unit in warranty' },
  { consent: 'EL-LISTING', building: 'EL', kind: 'listing', state: 'asked', reference: 'sample sent to the commission' },
  { consent: 'EX-GLASS', building: 'EX', kind: 'glass maker', glazing: 'double low-e', state: 'needed', reference: 'glass warranty to 2029' },
];

export const moveouts = [
  ['EC', '103', '2026-07-31', '2026-08-10'], ['EC', '206', '2026-08-31', '2026-09-12'], ['ER', '04', '2026-08-31', '2026-09-15'], ['EX', '302', '2026-09-30', '2026-10-05'], ['EC', '109', '2026-10-31', '2026-11-09'],
  ['ET', '502', '2026-10-31', '2026-11-16'], ['EL', '201', '2026-11-30', '2026-12-10'], ['EH', '05', '2026-12-31', '2027-01-20'], ['EC', '201', '2027-01-31', '2027-02-08'], ['ET', '303', '2027-02-28', '2027-03-10'],
  ['ER', '11', '2027-03-31', '2027-04-12'], ['EX', '105', '2027-03-31', '2027-04-05'], ['EC', '212', '2027-04-30', '2027-05-10'], ['EL', '304', '2027-05-31', '2027-06-08'], ['ET', '804', '2027-06-30', '2027-07-12'],
  ['EH', '08', '2027-07-31', ''], ['EC', '107', '2027-08-31', ''],
].map(([building, dwelling, out, moveIn]) => ({ building, dwelling, out, in: moveIn }));

export const locks = [
  { building: 'EC', dwelling: '104', direction: 'in', phase: 'OWNER1/2026-27', reason: 'promised to the tenant at the inspection in May', role: 'manager', date: '2026-06-15' },
];

const YEARS = [2026, 2027, 2028];
const name = (year) => `${year}-${String(year + 1).slice(2)}`;
const phases = (owner_entity, caps) => YEARS.map((year, i) => ({ owner_entity, name: name(year), first_day: `${year}-07-01`, last_day: `${year + 1}-06-30`, cap: caps[i], crew_minutes: null }));
export const plan = {
  name: 'Example Portfolio',
  currency: 'USD',
  study_start: '2026-07-01',
  view: 'whole',
  real_discount_rate: 0.03,
  real_escalation: 0,
  labour_per_hour: 34,
  labour_is_cash: true,
  contingency_share: 0.08,
  material_tax_share: 0.065,
  labour_tax_share: 0,
  consumables_per_m2: 1.5,
  trim_per_edge_mm: 12.7,
  crew_size: 2,
  crew_days_wk: 3,
  crew_hours_day: 8,
  mixed_film: false,
  owner_entities: [{ id: 'OWNER1', name: 'Owner One' }, { id: 'OWNER2', name: 'Owner Two' }],
  phases: [...phases('OWNER1', [14000, 14000, 9000]), ...phases('OWNER2', [4000, 4000, 3000])],
  no_work: YEARS.map((year) => ({ first_day: `${year}-08-15`, last_day: `${year}-10-14`, reason: 'storm season: no exterior access' })),
};
