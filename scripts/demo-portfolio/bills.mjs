// Bills and the cost ledger of the Example Portfolio: made up, the same every time, some of them spoilt on purpose.
// Use of a period = days × (base load + slope × degrees above 18.3 °C) × a few per cent of chance; the weather of the year is made up too.

/** Mean temperature of each month of the made-up year billed, °C. */
const MONTH_degC = [20.4, 21.9, 22.6, 25.3, 26.6, 28.4, 29.2, 28.8, 28.0, 26.9, 23.5, 21.8];
const BALANCE_degC = 18.3;
const DAY_MS = 86_400_000;
/** Days between readings, round by round. */
const ROUND_days = [30, 29, 31, 30, 32, 30, 29, 31, 30, 29, 32, 30, 31];
const FIRST = Date.parse('2025-05-12T00:00:00Z');

/** Chance of −1…1 from a name: the same name, the same chance. */
function chance(name) {
  let state = 2166136261;
  for (const letter of name) state = Math.imul(state ^ letter.charCodeAt(0), 16777619) >>> 0;
  state = Math.imul(state ^ (state >>> 15), 2246822519) >>> 0;
  return (((state ^ (state >>> 13)) >>> 0) / 2 ** 32) * 2 - 1;
}

const iso = (ms) => new Date(ms).toISOString().slice(0, 10);
const cents = (amount) => amount.toFixed(2);
const PRICE = {
  FLAT: ({ use, days }) => 0.19 * use + (12 * days) / 30,
  BLOCK: ({ use, days }) => 0.14 * Math.min(use, 500) + 0.21 * Math.min(Math.max(use - 500, 0), 500) + 0.27 * Math.max(use - 1000, 0) + (9 * days) / 30,
  TOU: ({ use, days }) => 0.152 * use + (15 * days) / 30,
  DEMAND: ({ use, days, peak }) => 0.13 * use + 14 * peak + (60 * days) / 30,
};

function useOf(meter, { start, days, base_kWh_day, slope_kWh_K_day }) {
  let use = 0;
  for (let day = 0; day < days; day++) {
    const month = new Date(start + day * DAY_MS).getUTCMonth();
    use += base_kWh_day + slope_kWh_K_day * Math.max(0, MONTH_degC[month] - BALANCE_degC);
  }
  return use * (1 + 0.05 * chance(`${meter} ${start}`));
}

/** A year of bills of one meter, read on its own day of the month. */
function year(meter, { tariff, base_kWh_yr, slope_kWh_K_day }) {
  let start = FIRST + Math.round(6 * chance(meter)) * DAY_MS;
  const whole = slope_kWh_K_day > 10 ? 0 : 1;
  return ROUND_days.map((days) => {
    const use = useOf(meter, { start, days, base_kWh_day: base_kWh_yr / 365, slope_kWh_K_day });
    const peak = tariff === 'DEMAND' ? Math.round((use / days / 24) * 21) / 10 : null;
    const bill = { meter, first_day: iso(start), last_day: iso(start + (days - 1) * DAY_MS), use_kWh: Number(use.toFixed(whole)), peak_kW: peak, amount: cents(PRICE[tariff]({ use, days, peak })), estimated: 'no' };
    start += days * DAY_MS;
    return bill;
  });
}

const two = (n) => String(n).padStart(2, '0');
const METERS = [
  ['EC-M1', { tariff: 'FLAT', base_kWh_yr: 58_200, slope_kWh_K_day: 15.2 }],
  ['EC-M2', { tariff: 'FLAT', base_kWh_yr: 11_800, slope_kWh_K_day: 1.3 }],
  ...Array.from({ length: 12 }, (_, i) => [`ER-${two(i + 1)}`, { tariff: 'BLOCK', base_kWh_yr: 4000 + 150 * ((i + 1) % 4) + 500 * chance(`base ${i}`), slope_kWh_K_day: 0.95 + 0.3 * chance(`slope ${i}`) }]),
  ['ET-M1', { tariff: 'DEMAND', base_kWh_yr: 108_000, slope_kWh_K_day: 39 }],
  ...Array.from({ length: 6 }, (_, i) => [`EH-${two(i + 1)}`, { tariff: 'TOU', base_kWh_yr: 6300 + 700 * chance(`house ${i}`), slope_kWh_K_day: 1.5 + 0.4 * chance(`heat ${i}`) }]),
];

/** What goes wrong with bills, once each. */
const SPOILT = {
  'ER-02': (bills) => bills.map((bill, i) => (i === 8 ? { ...bill, amount: cents(Number(bill.amount) * 10) } : bill)),
  'ER-05': (bills) => bills.map((bill, i) => (i === 4 ? { ...bill, estimated: 'yes', use_kWh: Math.round(bill.use_kWh * 0.7) } : bill)),
  'ER-07': (bills) => bills.flatMap((bill, i) => (i === 4 ? [] : i === 3 ? [{ ...bill, last_day: bills[4].last_day, use_kWh: Number((bill.use_kWh + bills[4].use_kWh).toFixed(1)), amount: cents(Number(bill.amount) + Number(bills[4].amount)) }] : [bill])),
  'ER-09': (bills) => bills.filter((_, i) => i !== 9),
  'ER-10': (bills) => bills.map((bill, i) => (i === 10 ? { ...bill, use_kWh: -38, amount: '-5.32' } : bill)),
  'ER-12': (bills) => bills.map((bill, i) => (i === 3 ? { ...bill, use_kWh: Number((bill.use_kWh / 1000).toFixed(3)) } : bill)),
  'EH-03': (bills) => bills.map((bill, i) => (i === 5 ? { ...bill, last_day: iso(Date.parse(bill.last_day) + 4 * DAY_MS) } : bill)),
};

export const bills = METERS.flatMap(([meter, of]) => (SPOILT[meter] ?? ((all) => all))(year(meter, of)));

export const ledger = [
  { entry: 'Q-2601', phase: 'OWNER1/2026-27', kind: 'quote', date: '2026-03-02', expires: '2026-05-31', amount: 5480, freight: 95, minimum_order: 500, film: 'B', note: 'five rolls of 48 and 60 in' },
  { entry: 'Q-2602', phase: 'OWNER1/2026-27', kind: 'quote', date: '2026-05-04', expires: '2027-06-30', amount: 5180, freight: 85, minimum_order: 500, film: 'B', note: 'the prices of rolls.csv' },
  { entry: 'PO-11', phase: 'OWNER2/2026-27', kind: 'committed', date: '2026-05-18', amount: 360, note: 'sample panes and readings for the listing at the lofts' },
  { entry: 'INV-207', phase: 'OWNER2/2026-27', kind: 'invoiced', date: '2026-06-02', amount: 210, settles: 'PO-11' },
  { entry: 'PAY-88', phase: 'OWNER2/2026-27', kind: 'paid', date: '2026-06-20', amount: 210, settles: 'INV-207' },
];
