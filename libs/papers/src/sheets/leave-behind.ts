import type { Plan } from '#planning';
import { check, text } from '../page/cell.js';
import type { PaperFile } from '../page/paper-bytes.js';
import { dashed, heading, listed, signOff } from '../page/parts.js';
import { writeTable } from '../page/table.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';

const TEXT = 14;
const HEAD = 17;
const DRY_days = [30, 60, 90] as const;

/** One page that stays in the dwelling: what is normal while the film dries, how to clean, when to call. To be copied. */
export function leaveBehind(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  return planPaper(plan, terms, {
    title: terms.texts.sentences['leave.title'],
    draw: (paper, say) => {
      paper.section();
      paper.write(say('leave.head'), { size: 24, bold: true });
      signOff(paper, [[say('leave.dwelling'), 0.5], [say('leave.date'), 0.5]], TEXT);
      heading(paper, say('leave.see'), HEAD);
      paper.write(say('leave.see.1'), { size: TEXT });
      paper.write(say('leave.see.2'), { size: TEXT, bold: true });
      heading(paper, say('leave.dry'), HEAD);
      writeTable(paper, {
        columns: [
          { head: say('leave.col.this'), share: 1, cell: () => [check(16)] },
          { head: say('leave.col.thick'), share: 3, cell: (r) => [text(r.thickness, TEXT)] },
          { head: say('leave.col.days'), share: 3, cell: (r) => [text(say('leave.days', { days: r.days }), TEXT, true)] },
        ],
        rows: [say('leave.thick.thin'), say('leave.thick.middle'), say('leave.thick.thick')].map((thickness, i) => ({ thickness, days: DRY_days[i]! })),
        headSize: TEXT,
      });
      paper.y += 4;
      paper.write(say('leave.slow'), { size: TEXT });
      heading(paper, say('leave.clean'), HEAD);
      paper.write(say('leave.clean.1'), { size: TEXT, bold: true });
      listed(paper, [say('leave.clean.2'), say('leave.clean.3')], { size: TEXT, mark: dashed });
      heading(paper, say('leave.tell'), HEAD);
      listed(paper, [say('leave.tell.1'), say('leave.tell.2'), say('leave.tell.3'), say('leave.tell.4')], { size: TEXT, mark: dashed });
      paper.y += 6;
      signOff(paper, [[say('leave.call'), 1]], TEXT);
      paper.y += 12;
      paper.write(say('leave.source'), { size: 10 });
    },
  });
}
