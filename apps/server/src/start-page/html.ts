/** Text that is safe to stand in a page as it is; made only by `html` below. */
export class Html {
  constructor(readonly text: string) {}
}

type Part = Html | readonly Html[] | string | number;

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
const plain = (value: string | number): string => String(value).replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);

function shown(part: Part): string {
  if (part instanceof Html) return part.text;
  return typeof part === 'object' ? part.map(shown).join('') : plain(part);
}

/** A piece of a page: whatever is put in is shown as text, never as markup, unless it was made by this function. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return new Html(strings.map((text, i) => text + (i < parts.length ? shown(parts[i] ?? '') : '')).join(''));
}
