import type { Plan, WorkOrder } from '#planning';
import { inDayOrder } from '../crew/day-order.js';
import { text } from '../page/cell.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { dashed, heading, listed } from '../page/parts.js';
import { writeTable } from '../page/table.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';

const TEXT = 11;
const HEAD = 14;
const DAY_ms = 86_400_000;
const LOOK_AFTER_days = 30;

/** First day on which what is still seen counts, for a day of work that is known. */
const lookFrom = (day: string): string => new Date(Date.parse(day) + LOOK_AFTER_days * DAY_ms).toISOString().slice(0, 10);

function writeNormal(paper: Paper, say: Say): void {
  heading(paper, say('day30.normal'), HEAD);
  const dry = say('day30.dry');
  writeTable(paper, {
    columns: [
      { head: say('day30.col.what'), share: 3, cell: (r) => [text(r[0], TEXT)] },
      { head: say('day30.col.until'), share: 3, cell: (r) => [text(r[1], TEXT)] },
      { head: say('day30.col.then'), share: 3, cell: (r) => [text(r[2], TEXT)] },
    ],
    rows: [
      [say('day30.haze'), dry, say('day30.then.bubble')],
      [say('day30.water'), dry, say('day30.then.bubble')],
      [say('day30.dirt'), say('day30.always'), say('day30.then.none')],
      [say('day30.peel'), say('day30.never'), say('day30.then.code')],
      [say('day30.crack'), say('day30.never'), say('day30.then.stop')],
    ] satisfies [string, string, string][],
    headSize: TEXT,
  });
}

function writeDwellings(paper: Paper, orders: readonly WorkOrder[], say: Say): void {
  heading(paper, say('day30.list'), HEAD);
  writeTable(paper, {
    columns: [
      { head: say('day30.col.dwelling'), share: 80, cell: (o) => [text(o.dwelling, TEXT, true)] },
      { head: say('day30.col.panes'), share: 42, cell: (o) => [text(String(o.panes.length), TEXT)] },
      { head: say('day30.col.done'), share: 72, cell: (o) => [text(o.day ?? '', TEXT)] },
      { head: say('day30.col.due'), share: 72, cell: (o) => [text(o.day === null ? '' : lookFrom(o.day), TEXT)] },
      { head: say('day30.col.looked'), share: 72, cell: () => [] },
      { head: say('day30.col.codes'), share: 150, cell: () => [] },
      { head: say('day30.col.by'), share: 52, cell: () => [] },
    ],
    rows: orders,
    headSize: TEXT,
    leastHeight: 20,
  });
}

/** The look after 30 days: what still counts as normal then, and a list of dwellings for each building and phase. */
export function day30Look(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  const groups = new Map<string, WorkOrder[]>();
  for (const order of inDayOrder(plan)) {
    const key = `${order.phase}|${order.building}`;
    groups.set(key, [...(groups.get(key) ?? []), order]);
  }
  return planPaper(plan, terms, {
    title: terms.texts.sentences['day30.title'],
    draw: (paper, say) => {
      if (groups.size === 0) {
        paper.section();
        paper.write(say('crew.none'), { size: HEAD });
      }
      for (const orders of groups.values()) {
        paper.section();
        paper.write(say('day30.head', { building: orders[0]!.building, phase: orders[0]!.phase }), { size: 18, bold: true });
        heading(paper, say('day30.how'), HEAD);
        listed(paper, [say('day30.how.1'), say('day30.how.2'), say('day30.how.3')], { size: TEXT, mark: dashed });
        writeNormal(paper, say);
        writeDwellings(paper, orders, say);
        paper.y += 6;
        paper.write(say('day30.source'), { size: 9 });
      }
    },
  });
}
