import type { Plan } from '#planning';
import { drawPicture } from '../page/draw-picture.js';
import type { PaperFile } from '../page/paper-bytes.js';
import type { Paper } from '../page/paper.js';
import { heading, listed, numbered, dashed, signOff } from '../page/parts.js';
import { type PaperTerms, planPaper } from '../paper-terms.js';
import { measuringPicture } from '../pictures/measuring.js';
import type { Say } from '../texts/texts.js';

const TEXT = 10;
const HEAD_HEIGHT = 112;
const ROW_HEIGHT = 25;

/** Heads of windows.csv with the width each needs; building, dwelling and plan type stand once above them. */
export const SURVEY_COLUMNS: readonly (readonly [string, number])[] = [
  ['mark', 32], ['room', 62], ['facade', 30], ['tilt_deg', 22], ['width_in', 46], ['height_in', 46], ['lite_rows', 20], ['lite_columns', 20], ['count', 20], ['frame_share', 24],
  ['glazing', 62], ['shgc', 24], ['u_factor_Btu_h_ft2F', 24], ['overhang_depth_ft', 24], ['overhang_gap_ft', 24], ['fin_depth_ft', 24], ['fin_gap_ft', 24], ['reveal_in', 22],
  ['insect_screen_share', 24], ['screen_kind', 30], ['blind', 32], ['sill_height_ft', 24], ['reach', 34], ['flags', 50], ['warranty_end', 34], ['replacement_year', 28], ['existing_film', 34], ['existing_film_condition', 34], ['dropped', 22],
];

/** An empty table to write into, its heads turned. */
function drawGrid(paper: Paper): void {
  const all = SURVEY_COLUMNS.reduce((sum, [, width]) => sum + width, 0);
  const top = paper.y;
  const rows = Math.floor((paper.room - HEAD_HEIGHT) / ROW_HEIGHT);
  const bottom = top + HEAD_HEIGHT + rows * ROW_HEIGHT;
  paper.line([paper.left, top], [paper.right, top], 1.2);
  for (let r = 0; r <= rows; r++) paper.line([paper.left, top + HEAD_HEIGHT + r * ROW_HEIGHT], [paper.right, top + HEAD_HEIGHT + r * ROW_HEIGHT], r === 0 ? 1.2 : 0.6);
  let x = paper.left;
  for (const [head, share] of SURVEY_COLUMNS) {
    const width = (share / all) * paper.width;
    paper.line([x, top], [x, bottom]);
    paper.letters(head, { size: 9, bold: true }, { x: x + width / 2 + 3, y: top + HEAD_HEIGHT - 4, turned: true });
    x += width;
  }
  paper.line([paper.right, top], [paper.right, bottom]);
  paper.y = bottom;
}

function writeHow(paper: Paper, say: Say): void {
  paper.section();
  heading(paper, say('survey.how'), 16);
  drawPicture(paper, measuringPicture(say));
  paper.y += 4;
  listed(paper, [say('survey.rule.1'), say('survey.rule.2'), say('survey.rule.3'), say('survey.rule.4'), say('survey.rule.5'), say('survey.rule.6')], { size: TEXT, mark: numbered });
  heading(paper, say('survey.codes'), 12);
  listed(paper, [say('survey.codes.blind'), say('survey.codes.screen'), say('survey.codes.reach'), say('survey.codes.film'), say('survey.codes.flags'), say('survey.codes.glazing')], { size: TEXT, mark: dashed });
  paper.y += 4;
  paper.write(say('survey.columns'), { size: TEXT });
}

/** A sheet to survey with, to be copied: how to measure on one side, the rows of windows.csv on the other. */
export function surveySheet(plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  return planPaper(plan, terms, {
    title: terms.texts.sentences['survey.title'],
    landscape: true,
    draw: (paper, say) => {
      writeHow(paper, say);
      paper.section();
      heading(paper, say('survey.sheet'), 14);
      signOff(paper, [[say('survey.building'), 0.16], [say('survey.dwelling'), 0.18], [say('survey.plantype'), 0.18], [say('survey.front'), 0.2], [say('survey.by'), 0.12], [say('survey.date'), 0.16]], TEXT);
      paper.y += 8;
      drawGrid(paper);
    },
  });
}
