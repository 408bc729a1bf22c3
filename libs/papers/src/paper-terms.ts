import type { Plan } from '#planning';
import type { PageFrame, PageSetup, PaperFormat } from './page/paper.js';
import { paperFile, type PaperFile } from './page/paper-bytes.js';
import type { Paper } from './page/paper.js';
import { en } from './texts/en.js';
import { type Say, sayIn, type Texts } from './texts/texts.js';

/** How papers are printed: all that is not in the plan comes in here. */
export interface PaperTerms {
  /** Time of printing; it stands on every page and in the file, so the same plan and time give the same bytes. */
  readonly printed: Date;
  /** Null takes letter for a survey in inches, A4 for one in millimetres. */
  readonly format: PaperFormat | null;
  readonly texts: Texts;
}

export const english: Texts = { language: 'en-US', sentences: en };

const MM_ENTERED = /\d\s*(mm|cm|m)$/;

/** Surveys entered in inches print on letter, others on A4. */
export function formatOf(plan: Plan): PaperFormat {
  const widths = [...plan.rolls.map((r) => r.width), ...plan.lines.flatMap((l) => l.windows.map((w) => ({ entered: w.enteredWidth, mm: w.width_mm })))];
  const metric = widths.filter((w) => MM_ENTERED.test(w.entered.trim()) || Math.abs(Number(w.entered) - w.mm) < 1e-6).length;
  return metric * 2 > widths.length ? 'a4' : 'letter';
}

const LONG_ID = 12;
const shortId = (id: string): string => (id.length > LONG_ID ? `${id.slice(0, 8)}…` : id);

export interface PlanPaper {
  readonly title: string;
  readonly landscape?: boolean;
  readonly margin?: number;
  readonly frameSize?: number | null;
  readonly draw: (paper: Paper, say: Say) => void;
}

/** A paper of a plan: its frame carries plan, revision, time of printing and page. */
export function planPaper(plan: Plan, terms: PaperTerms, of: PlanPaper): Promise<PaperFile> {
  const say = sayIn(terms.texts);
  const setup: PageSetup = { format: terms.format ?? formatOf(plan), landscape: of.landscape ?? false, margin: of.margin ?? 36, frameSize: of.frameSize === undefined ? 10 : of.frameSize };
  const frame: PageFrame = {
    headLeft: of.title,
    headRight: say('frame.plan', { id: shortId(plan.id), revision: plan.revision }),
    footLeft: say('frame.printed', { made: plan.madeOn.slice(0, 10), printed: `${terms.printed.toISOString().slice(0, 16).replace('T', ' ')} UTC` }),
    footRight: (page, pages) => say('frame.page', { page, pages }),
  };
  return paperFile({ title: `${of.title}: ${plan.name}`, language: terms.texts.language, created: terms.printed, setup, frame, draw: (paper) => of.draw(paper, say) });
}
