/** Width of a text in one style. */
export type WidthOf = (text: string) => number;

/** A word too long for a line is cut where the line ends: nothing is ever left out. */
function pieces(word: string, width: number, widthOf: WidthOf): string[] {
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && widthOf(part + sign) > width) {
      parts.push(part);
      part = sign;
    } else part += sign;
  }
  return [...parts, part];
}

/**
 * A text in lines no wider than asked; line breaks of the text stay.
 *
 * @param width points, > 0
 */
export function wrapped(text: string, width: number, widthOf: WidthOf): string[] {
  if (!(width > 0)) throw new RangeError(`width must be above 0, got ${String(width)}`);
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(' ').flatMap((w) => (widthOf(w) > width ? pieces(w, width, widthOf) : [w]))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && widthOf(longer) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  });
}
