/** Sheets in the order of the book: cover, manager, crew, accountant, what lies behind the figures. */
export const SHEET = {
  summary: 'Summary',
  dwellings: 'Ranked dwellings',
  facades: 'Ranked facades',
  plan: 'Plan',
  planDetails: 'Plan details',
  reserve: 'Reserve',
  waiting: 'Waiting for consent',
  capCurve: 'Cap and value',
  uncertainty: 'Uncertainty',
  uncertaintyFigures: 'Uncertainty figures',
  pictures: 'Pictures',
  workOrders: 'Work orders',
  cutList: 'Cut list',
  film: 'Film to buy',
  calendar: 'Calendar',
  payback: 'Payback',
  paybackLines: 'Payback lines',
  cashFlow: 'Cash flow',
  savings: 'Savings by year',
  spans: 'Saving by span',
  bills: 'Bills by month',
  tariffs: 'Tariffs',
  payers: 'Payers',
  rebates: 'Rebates',
  meters: 'Meters',
  ledger: 'Ledger',
  energy: 'Energy',
  calibration: 'Calibration',
  verification: 'Verification',
  assumptions: 'Assumptions and sources',
  receipts: 'Receipts',
  findings: 'Findings',
} as const;

export type SheetName = (typeof SHEET)[keyof typeof SHEET];

/** What a sheet is for, in one line of the cover. */
export interface SheetLine {
  readonly sheet: SheetName;
  readonly reader: 'Property manager' | 'Crew' | 'Accountant' | 'Science' | 'All';
  readonly about: string;
}

/** The sheets behind the cover, in order, by reader. */
export const SHEET_LINES: readonly SheetLine[] = [
  { sheet: SHEET.dwellings, reader: 'Property manager', about: 'which dwellings first, by cooling cost reduced for each dollar, with ranges and reasons' },
  { sheet: SHEET.facades, reader: 'Property manager', about: 'the same for each side of each dwelling' },
  { sheet: SHEET.plan, reader: 'Property manager', about: 'what is filmed in which fiscal year, what it costs and is worth' },
  { sheet: SHEET.planDetails, reader: 'Property manager', about: 'the rest of each line: effort, expected in bills, where it differs from the rank, survey rows' },
  { sheet: SHEET.reserve, reader: 'Property manager', about: 'what comes next if a line drops out' },
  { sheet: SHEET.waiting, reader: 'Property manager', about: 'letters and tests without a date, with the value behind each' },
  { sheet: SHEET.capCurve, reader: 'Property manager', about: 'what more or less money would be worth' },
  { sheet: SHEET.uncertainty, reader: 'Property manager', about: 'how sure the plan and each line are, in words, and when a line drops out' },
  { sheet: SHEET.uncertaintyFigures, reader: 'Property manager', about: 'what moves the plan, chances by line, what was drawn' },
  { sheet: SHEET.pictures, reader: 'Property manager', about: 'ranking with ranges, value against cap, cash position' },
  { sheet: SHEET.workOrders, reader: 'Crew', about: 'one order for each dwelling and visit, pane by pane' },
  { sheet: SHEET.cutList, reader: 'Crew', about: 'pieces in the order they come off each roll' },
  { sheet: SHEET.film, reader: 'Crew', about: 'whole rolls to buy, stock, what is left over; roll prices are inputs' },
  { sheet: SHEET.calendar, reader: 'Crew', about: 'working days with their dwellings and notices' },
  { sheet: SHEET.payback, reader: 'Accountant', about: 'inputs, results, spending by phase, one time axis; change the boxed cells' },
  { sheet: SHEET.paybackLines, reader: 'Accountant', about: 'each line by formula' },
  { sheet: SHEET.cashFlow, reader: 'Accountant', about: 'by fiscal year, owner entity, building and payer' },
  { sheet: SHEET.savings, reader: 'Accountant', about: 'saving of each line in each year, all payers and owner' },
  { sheet: SHEET.spans, reader: 'Accountant', about: 'saving while plant and windows stay the same; gas price is an input' },
  { sheet: SHEET.bills, reader: 'Accountant', about: 'bills of each line by month, as found and with its film' },
  { sheet: SHEET.tariffs, reader: 'Accountant', about: 'rates, limits, demand prices, fixed charges: inputs' },
  { sheet: SHEET.payers, reader: 'Accountant', about: 'who keeps a saving: shares, lags, vacancy are inputs' },
  { sheet: SHEET.rebates, reader: 'Accountant', about: 'money from funds: amounts are inputs' },
  { sheet: SHEET.meters, reader: 'Accountant', about: 'computed bills of each meter with all films together' },
  { sheet: SHEET.ledger, reader: 'Accountant', about: 'money already spoken for' },
  { sheet: SHEET.energy, reader: 'Science', about: 'seasons, design day, run hours, film on its glass' },
  { sheet: SHEET.calibration, reader: 'Science', about: 'what bills did to the model' },
  { sheet: SHEET.verification, reader: 'Science', about: 'bills after the film against bills before' },
  { sheet: SHEET.assumptions, reader: 'All', about: 'terms, assumed values, weather and films, each with source and basis' },
  { sheet: SHEET.receipts, reader: 'All', about: 'how any figure is opened to one page and worked again' },
  { sheet: SHEET.findings, reader: 'All', about: 'what the data and the result have to say' },
];
