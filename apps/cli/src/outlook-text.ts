import { wholeDollarsText } from '#calc';
import type { Plan } from '#planning';
import { tableText } from './said.js';

const MOST_INFLUENCES = 5;
const percent = (share: number): string => `${(share * 100).toFixed(0)} %`;

/** How sure the plan is: its chances in words, what moves it, and the lines that are least sure. */
export function outlookText({ outlook }: Plan): string[] {
  if (outlook === null) return ['No draws were made: the plan says nothing of its chances (--draws 200 makes them).', ''];
  if (outlook.lines.length === 0) return ['Nothing is bought, so there is nothing to be sure of.', ''];
  const moves = outlook.influences.slice(0, MOST_INFLUENCES).map((i) => [i.parameter, i.rankCorrelation.toFixed(2), wholeDollarsText(i.whereLow), wholeDollarsText(i.whereHigh)]);
  const shaky = outlook.lines.filter((l) => (l.inPlanShare ?? 1) < 0.5);
  return [
    `How sure, by ${outlook.draws} draws (seed ${outlook.seed}):`,
    ...outlook.words.map((words) => `  ${words}`),
    tableText(['what moves the value in bills', 'rank correlation', 'value where it is low', 'where it is high'], moves),
    ...(outlook.selections === 0 ? [] : [`In the ${outlook.selections} selections made again, ${shaky.length} of ${outlook.lines.length} lines are in fewer than half${shaky.length === 0 ? '' : `: ${shaky.slice(0, 6).map((l) => `${l.dwelling} ${percent(l.inPlanShare ?? 0)}`).join(', ')}${shaky.length > 6 ? ', …' : ''}`}.`]),
    '',
  ];
}
