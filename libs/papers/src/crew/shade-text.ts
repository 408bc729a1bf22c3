import type { ShadeTime } from '#planning';
import type { Say } from '../texts/texts.js';

function stretch({ side, from, until }: ShadeTime, say: Say): string {
  if (from === null) return until === null ? say('crew.shade.all', { side }) : say('crew.shade.until', { side, until });
  return until === null ? say('crew.shade.from', { side, from }) : say('crew.shade.between', { side, from, until });
}

/** When the sides of a dwelling lie in shade on the day of the visit; null where none of them does. */
export function shadeText(shade: readonly ShadeTime[], say: Say): string | null {
  const [first] = shade;
  return first === undefined ? null : say('crew.shade.day', { sides: shade.map((s) => stretch(s, say)).join('; '), day: first.day });
}
