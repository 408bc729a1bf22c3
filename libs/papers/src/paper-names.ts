import type { Plan } from '#planning';
import { crewSheets } from './crew/crew-sheets.js';
import { cutListPaper } from './cuts/cut-list-paper.js';
import { kitPaper } from './kit/kit-paper.js';
import { pieceLabels } from './labels/piece-labels.js';
import { decisionMemo } from './memo/decision-memo.js';
import { picturePages } from './pictures/picture-pages.js';
import { day30Look } from './sheets/day-30.js';
import { entryNotices } from './sheets/entry-notices.js';
import { leaveBehind } from './sheets/leave-behind.js';
import { surveySheet } from './sheets/survey-sheet.js';
import type { PaperFile } from './page/paper-bytes.js';
import type { PaperTerms } from './paper-terms.js';

type MakePaper = (plan: Plan, terms: PaperTerms) => Promise<PaperFile>;

/** The papers of a plan by the name of their file, in the order of the work. */
const MAKERS = {
  crew: crewSheets,
  cuts: cutListPaper,
  labels: pieceLabels,
  kit: kitPaper,
  notices: entryNotices,
  'leave-behind': leaveBehind,
  'day-30': day30Look,
  survey: surveySheet,
  memo: decisionMemo,
  pictures: picturePages,
} satisfies Readonly<Record<string, MakePaper>>;

export type PaperName = keyof typeof MAKERS;

export const PAPER_NAMES = Object.keys(MAKERS) as readonly PaperName[];

export const isPaperName = (name: string): name is PaperName => Object.hasOwn(MAKERS, name);

/** Plans kept by earlier versions lack what the papers print. */
export function isPrintable(plan: Plan): boolean {
  const orders = (plan as Partial<Plan>).workOrders as readonly Partial<Plan['workOrders'][number]>[] | undefined;
  return orders?.every((order) => order.steps !== undefined && order.shade !== undefined) ?? false;
}

/**
 * One paper of a plan as a PDF.
 *
 * @throws RangeError for a plan kept by an earlier version
 */
export function paper(name: PaperName, plan: Plan, terms: PaperTerms): Promise<PaperFile> {
  if (!isPrintable(plan)) throw new RangeError(`plan must be made by this version, got ${plan.id} of version ${plan.program}; make it again`);
  return MAKERS[name](plan, terms);
}
