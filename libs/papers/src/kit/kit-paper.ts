import type { KitItem, Plan, WorkOrder } from '#planning';
import { rollText, shortRoll } from '../cuts/roll-sheets.js';
import { check, text } from '../page/cell.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { factRows, heading, runIn } from '../page/parts.js';
import { writeTable } from '../page/table.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';
import { inDayOrder } from '../crew/day-order.js';
import { kitText } from '../crew/pane-notes.js';
import { visitOf } from '../crew/visit-day.js';

const TEXT = 12;
const HEAD = 18;

/** What is loaded for one day in one building; dwellings without a day stand together by year and building. */
interface Load {
  readonly day: string | null;
  readonly phase: string;
  readonly building: string;
  readonly orders: readonly WorkOrder[];
}

function loads(plan: Plan): Load[] {
  const byVisit = new Map<string, WorkOrder[]>();
  for (const order of inDayOrder(plan)) {
    const key = `${order.day ?? ''}|${order.phase}|${order.building}`;
    byVisit.set(key, [...(byVisit.get(key) ?? []), order]);
  }
  return [...byVisit.values()].map((orders): Load => ({ day: orders[0]!.day, phase: orders[0]!.phase, building: orders[0]!.building, orders }));
}

const rollsText = (order: WorkOrder, say: Say): string => [...new Set(order.panes.map((p) => shortRoll(p.roll, order.phase)))].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })).map((roll) => rollText(roll, say)).join(', ');

/** Taken once for the day, whatever the number of dwellings. */
const TOOLS: ReadonlySet<string> = new Set(['kit.tape', 'kit.ladder', 'kit.scraper', 'kit.sheet']);

/** What the orders of a day take together: what is used up is added, of tools the most that any of them needs. */
function dayKit(orders: readonly WorkOrder[]): KitItem[] {
  const byWhat = new Map<string, KitItem>();
  for (const item of orders.flatMap((o) => o.kit)) {
    const before = byWhat.get(item.what)?.quantity ?? 0;
    byWhat.set(item.what, { ...item, quantity: TOOLS.has(item.told?.key ?? '') ? Math.max(before, item.quantity) : before + item.quantity });
  }
  return [...byWhat.values()];
}

function writeLoad(paper: Paper, load: Load, of: { readonly plan: Plan; readonly say: Say }): void {
  const { say } = of;
  const { orders } = load;
  const sum = (part: (o: WorkOrder) => number): number => orders.reduce((total, o) => total + part(o), 0);
  const title = load.day === null ? say('kit.noDay', { building: load.building }) : say('kit.head', { day: load.day, building: load.building });
  paper.section(() => {
    paper.write(say('kit.continued', { head: title }), { size: TEXT, bold: true });
    paper.y += 4;
  });
  paper.write(title, { size: HEAD, bold: true });
  const building = of.plan.buildings.find((b) => b.id === load.building);
  factRows(paper, [
    [say('crew.place'), say('crew.where', { building: load.building, name: building?.name ?? '' })],
    ...(building?.crew === 'contractor' ? [[say('crew.who'), say('calendar.byContractor')] satisfies [string, string]] : []),
    [say('kit.phase'), load.phase],
    [say('kit.total'), say('kit.total.said', { dwellings: say('count.dwellings', { count: orders.length }), panes: say('count.panes', { count: sum((o) => o.panes.length) }), best: (sum((o) => o.minutes.best) / 60).toFixed(0), low: (sum((o) => o.minutes.low) / 60).toFixed(0), high: (sum((o) => o.minutes.high) / 60).toFixed(0) })],
  ], TEXT);
  if (load.day !== null) runIn(paper, { head: say('kit.day'), text: kitText(dayKit(orders), say) }, TEXT);
  heading(paper, say('kit.by'), 14);
  writeTable(paper, {
    columns: [
      { head: say('kit.col.loaded'), share: 52, cell: () => [check(16)] },
      { head: say('kit.col.dwelling'), share: 80, cell: (o) => [text(o.dwelling, TEXT, true), text(visitOf(of.plan, o)?.visit.start ?? '', TEXT)] },
      { head: say('kit.col.panes'), share: 44, cell: (o) => [text(String(o.panes.length), TEXT)] },
      { head: say('kit.col.rolls'), share: 110, cell: (o) => [text(rollsText(o, say), TEXT)] },
      { head: say('kit.col.kit'), share: 260, cell: (o) => [text(kitText(o.kit, say), TEXT)] },
    ],
    rows: orders,
    headSize: TEXT,
  });
}

/** What to load, a page a day and building: each dwelling with its pieces, the rolls they come from, and its kit. */
export function kitPaper(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  return planPaper(plan, terms, {
    title: terms.texts.sentences['kit.title'],
    frameSize: TEXT,
    draw: (paper, say) => {
      if (plan.workOrders.length === 0) {
        paper.section();
        paper.write(say('crew.none'), { size: 14 });
      }
      for (const load of loads(plan)) writeLoad(paper, load, { plan, say });
    },
  });
}
