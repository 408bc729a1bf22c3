import type { Plan } from '#planning';
import { inDayOrder } from '../crew/day-order.js';
import { isEmptyThen } from '../crew/visit-day.js';
import type { PaperFile } from '../page/paper-bytes.js';
import { factRows, signOff } from '../page/parts.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';

const TEXT = 13;

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
        factRows(paper, [[say('notice.to'), order.dwelling], [say('crew.place'), say('crew.where', { building: order.building, name })], ...(order.day === null ? [] : [[say('notice.when'), order.day] satisfies [string, string]])], TEXT);
        paper.y += 10;
        paper.write(order.told?.notice == null ? order.noticeText : say.told(order.told.notice), { size: TEXT });
        paper.y += 24;
        signOff(paper, [[say('notice.when'), 1]], TEXT);
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
