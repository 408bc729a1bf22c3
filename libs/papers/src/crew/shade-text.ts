import type { ShadeTime } from '#planning';
import type { Say } from '../texts/texts.js';
import { wordOf } from './pane-notes.js';

function stretch({ side: word, from, until }: ShadeTime, say: Say): string {
  const side = wordOf(say, 'side', word);
  if (from === null) return until === null ? say('crew.shade.all', { side }) : say('crew.shade.until', { side, until });
  return until === null ? say('crew.shade.from', { side, from }) : say('crew.shade.between', { side, from, until });
}

/** When the sides of a dwelling lie in shade on the day of the visit; null where none of them does. */
export function shadeText(shade: readonly ShadeTime[], say: Say): string | null {
  const [first] = shade;
  return first === undefined ? null : say(first.clock === 'daylight' || first.clock === 'standard' ? 'crew.shade.dayClock' : 'crew.shade.day', { sides: shade.map((s) => stretch(s, say)).join('; '), day: first.day });
}
