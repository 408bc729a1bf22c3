import type { Plan } from '#planning';
import { address, columnName, dollars, live, type LiveFormula, quoted } from '../cells.js';
import type { PaybackPlace } from '../payback/payback-sheet.js';
import { SHEET } from '../sheet-names.js';
import type { TablePlace } from '../table.js';
import { boughtAgain_cents, KEPT, panesToCutAgain } from './film-again.js';
import { FILM_AS_RUN_COLUMN, type FilmPlace } from './film-to-buy.js';
import { PLAN_COLUMN } from './plan-lines.js';
import type { WorkOrderPlace } from './work-orders.js';

/** Where the figures stand that must agree with each other. */
export interface CheckPlaces {
  readonly plan: TablePlace;
  readonly workOrders: WorkOrderPlace;
  readonly cutList: TablePlace;
  readonly film: FilmPlace;
  readonly payback: PaybackPlace;
}

export interface Check {
  readonly label: string;
  readonly unit: string;
  readonly how: string;
  readonly formula: LiveFormula;
}

const CUT_PIECES = 14;
const SPENDING = { film: 3, left: 12, dwellings: 13, panes: 14 } as const;

const rows = (place: Pick<TablePlace, 'firstRow' | 'lastRow'>, column: number): string => `${address(column, place.firstRow)}:${address(column, Math.max(place.firstRow, place.lastRow))}`;
const on = (sheet: string, range: string): string => `${quoted(sheet)}!${range}`;

/** Figures that stand on several sheets must agree; each check is their difference. */
export function checksOf(plan: Plan, at: CheckPlaces & { readonly spending: TablePlace }): Check[] {
  const own = (column: number): string => `SUM(${rows(at.spending, column)})`;
  const planPanes = `SUM(${on(SHEET.plan, rows(at.plan, PLAN_COLUMN.panes))})`;
  const panes = plan.phases.reduce((sum, p) => sum + p.panes, 0);
  const linePanes = plan.lines.reduce((sum, l) => sum + l.option.paneCount, 0);
  // Panes of work before that are done again have orders and no line.
  const againPanes = plan.workOrders.filter((o) => o.again === true).reduce((sum, o) => sum + o.panes.length, 0);
  const workPanes = plan.workOrders.reduce((sum, o) => sum + o.panes.length, 0);
  const againCut = panesToCutAgain(plan);
  const pieces = [...plan.cuts, ...(plan.settled?.redoCuts ?? [])].reduce((sum, c) => sum + c.pieces.length + c.unplaced.length, 0);
  const film = plan.phases.reduce((sum, p) => sum + p.spending.film_cents, 0);
  const bought = plan.cuts.reduce((sum, c) => sum + c.bought.reduce((s, b) => s + b.count * b.price_cents, 0), 0);
  const over = Math.max(0, ...plan.phases.map((p) => p.spending.total_cents - p.phase.cap_cents));
  const workColumn = columnName(at.workOrders.paneColumn);
  const dwellings = plan.phases.reduce((sum, p) => sum + p.lines, 0);
  const { results, changedCell, cashFlow, shares, linesCost, spentOnAxis } = at.payback;
  return [
    { label: 'Spent over the caps', unit: plan.terms.currency, how: 'largest of the phases', formula: live(`ROUND(-1*MIN(0,${rows(at.spending, SPENDING.left)}),2)`, dollars(over)) },
    { label: 'Panes: phases less plan lines', unit: 'panes', how: `this sheet and ${SHEET.plan}`, formula: live(`${own(SPENDING.panes)}-${planPanes}`, panes - linePanes) },
    { label: 'Panes: plan less work orders', unit: 'panes', how: `${SHEET.plan} and ${SHEET.workOrders}${againPanes === 0 ? '' : ', panes to be done again counted in'}`, formula: live(`${planPanes}${againPanes === 0 ? '' : `+${String(againPanes)}`}-SUM(${on(SHEET.workOrders, `${workColumn}${String(at.workOrders.firstRow)}:${workColumn}${String(at.workOrders.lastRow)}`)})`, linePanes + againPanes - workPanes) },
    { label: 'Panes: plan less cut list', unit: 'panes', how: `${SHEET.plan} and ${SHEET.cutList}; a pane that could not be laid is a row too${againCut === 0 ? '' : '; panes to be done again counted in'}`, formula: live(`${planPanes}${againCut === 0 ? '' : `+${String(againCut)}`}-SUM(${on(SHEET.cutList, rows(at.cutList, CUT_PIECES))})`, linePanes + againCut - pieces) },
    { label: 'Dwellings: phases less plan lines', unit: 'dwellings', how: `this sheet and ${SHEET.plan}`, formula: live(`${own(SPENDING.dwellings)}-COUNTA(${on(SHEET.plan, rows(at.plan, 3))})`, dwellings - plan.lines.length) },
    { label: 'Buildings: cash flow less payback lines', unit: plan.terms.currency, how: `${SHEET.cashFlow}, film work building by building, and ${SHEET.paybackLines}, installed cost`, formula: live(`ROUND(${cashFlow.filmWork}+SUM(${linesCost}),2)`, 0) },
    { label: 'Phases less cash of the years', unit: plan.terms.currency, how: `${SHEET.payback}: spending by phase and on the time axis, year 0 and after`, formula: live(`ROUND(plan_spending+${spentOnAxis},2)`, 0) },
    { label: 'Film: phases less rolls to buy', unit: plan.terms.currency, how: `this sheet and ${SHEET.film}, as run`, formula: live(`ROUND(${own(SPENDING.film)}-SUM(${on(SHEET.film, rows(at.film.table, FILM_AS_RUN_COLUMN))}),2)`, dollars(film - bought)) },
    ...againChecks(plan, at.film),
    { label: 'Payback sheet less plan', unit: 'all results', how: `${SHEET.payback}, differences at the plan’s own inputs; not asked while an input is changed`, formula: live(`IF(${on(SHEET.payback, changedCell)}=0,ROUND(SUM(${on(SHEET.payback, `${results.differences.first}:${results.differences.last}`)}),2),0)`, 0) },
    { label: 'Owner’s parts below 0 or over 100 %', unit: 'count', how: `${SHEET.payers}; the tenant has the rest, so that both make 100 %`, formula: live(`SUMPRODUCT((${shares}<0)+(${shares}>1))`, 0) },
    { label: 'Cash flow less time axis', unit: 'all years', how: `${SHEET.cashFlow} and ${SHEET.payback}: spending, rebates, owner, tenants; sum of squares`, formula: live(`SUMSQ(${cashFlow.differences})`, 0) },
  ];
}

/** Film for panes to be done again: what is kept of the caps is the cost of its rolls with tax, but for a cent lost by rounding in each phase. */
function againChecks(plan: Plan, { again }: FilmPlace): Check[] {
  if (again === null) return [];
  const kept = (column: number): string => on(SHEET.film, rows(again.kept, column));
  const difference = (plan.settled?.redoMoney ?? []).reduce((sum, m) => sum + dollars(m.film_cents) - dollars(boughtAgain_cents(plan, m.phase)) * (1 + plan.terms.materialTaxShare), 0);
  return [{ label: 'Film to be done again: kept less rolls', unit: plan.terms.currency, how: `${SHEET.film}, with tax, to ten cents`, formula: live(`ROUND(SUM(${kept(KEPT.film)})-SUMPRODUCT(${kept(KEPT.rolls)},1+${kept(KEPT.tax)}),1)`, Math.round(difference * 10) / 10) }];
}
