import type { Plan, WorkOrder } from '#planning';
import { inDayOrder } from '../crew/day-order.js';
import { isEmptyThen, visitOf } from '../crew/visit-day.js';
import type { PaperFile } from '../page/paper-bytes.js';
import { factRows, signOff } from '../page/parts.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import type { Say } from '../texts/texts.js';

const TEXT = 13;

/** Day and hour of the calendar; null where there is no day yet. */
function whenOf(plan: Plan, order: WorkOrder, say: Say): string | null {
  const found = visitOf(plan, order);
  return found === null ? order.day : say('notice.about', { day: found.day, start: found.visit.start });
}

/** A notice a page for every dwelling that somebody lives in when the crew comes. */
export function entryNotices(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  const occupied = inDayOrder(plan).filter((o) => !isEmptyThen(plan, o));
  return planPaper(plan, terms, {
    title: terms.texts.sentences['notice.title'],
    margin: 54,
    draw: (paper, say) => {
      if (occupied.length === 0) {
        paper.section();
        paper.write(say('notice.none'), { size: TEXT });
      }
      for (const order of occupied) {
        paper.section();
        paper.y += 20;
        paper.write(say('notice.head'), { size: 24, bold: true });
        paper.y += 8;
        const name = plan.buildings.find((b) => b.id === order.building)?.name ?? '';
        const when = whenOf(plan, order, say);
        factRows(paper, [[say('notice.to'), order.dwelling], [say('crew.place'), say('crew.where', { building: order.building, name })], ...(when === null ? [] : [[say('notice.when'), when] satisfies [string, string]])], TEXT);
        paper.y += 10;
        paper.write(order.told?.notice == null ? order.noticeText : say.told(order.told.notice), { size: TEXT });
        paper.y += 24;
        signOff(paper, [[when === null ? say('notice.when') : say('notice.changed'), 1]], TEXT);
        paper.y += 8;
        signOff(paper, [[say('notice.given'), 0.5], [say('notice.by'), 0.5]], TEXT);
        paper.y += 8;
        signOff(paper, [[say('notice.call'), 1]], TEXT);
        paper.y += 24;
        paper.write(say('notice.source'), { size: 10 });
      }
    },
  });
}
