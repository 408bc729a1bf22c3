import type { Plan } from '#planning';
import { drawPicture } from '../page/draw-picture.js';
import type { PaperFile } from '../page/paper-bytes.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import { capCurvePictures } from './cap-curve.js';
import { cashPicture } from './cash-position.js';
import { rankingPicture } from './ranking.js';

/** The pictures of a plan, one a page: ranking, value against cap, cash position. */
export function picturePages(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  return planPaper(plan, terms, {
    title: terms.texts.sentences['pictures.title'],
    draw: (paper, say) => {
      for (const picture of [rankingPicture(plan, say, { best: 16, ofEachBuilding: 2 }), ...capCurvePictures(plan, say), cashPicture(plan, say)]) {
        paper.section();
        drawPicture(paper, picture);
      }
    },
  });
}
