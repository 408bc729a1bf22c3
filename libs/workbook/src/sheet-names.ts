/** Sheets in the order of the book. */
export const SHEET = {
  summary: 'Summary',
  dwellings: 'Ranked dwellings',
  facades: 'Ranked facades',
  plan: 'Plan',
  waiting: 'Waiting for consent',
  workOrders: 'Work orders',
  cutList: 'Cut list',
  film: 'Film to buy',
  payback: 'Payback',
  paybackLines: 'Payback lines',
  savings: 'Savings by year',
  meters: 'Meters',
  assumptions: 'Assumptions and sources',
  findings: 'Findings',
} as const;
