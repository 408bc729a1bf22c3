/** A piece of a page in which every value is shown as text; made only by `html` below. */
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

/** A table with its name; on a narrow screen it is moved sideways by itself, by keyboard too, and not the page. */
export function tableBox(name: string, rows: Html): Html {
  return html`<div class="table" role="region" aria-label="${name}" tabindex="0"><table><caption>${name}</caption>\n${rows}</table></div>\n`;
}
