// Words people and spreadsheets write where nothing is known. A dash alone is one of them, a number with a minus is not.
const UNKNOWN = new Set(['', '-', '--', '?', '??', 'n/a', 'na', 'n.a.', 'n.a', '#n/a', '#ref!', '#value!', '#name?', '#div/0!', '#num!', '#null!', 'null', 'nan', 'tbd', 'tbc', 'tba', 'unknown', 'not known', 'idk', "don't know", 'unk']);

/** Spaces of every kind made plain, zero-width signs and outer spaces taken off; nothing else changed. */
export function trimmed(text: string): string {
  return text.replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000\t]/g, ' ').replace(/[\u200b-\u200d\u2060\ufeff]/g, '').trim();
}

/** Text for reading numbers and words: curly quotes and primes made straight, dashes and the minus sign made "-". */
export function plainText(text: string): string {
  return trimmed(text)
    .replace(/[\u2018\u2019\u201b\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033\u201f]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/ {2,}/g, ' ');
}

/** True for a blank cell and for every way of writing "not known". */
export function saysUnknown(text: string): boolean {
  const plain = plainText(text).toLowerCase();
  return UNKNOWN.has(plain) || /^#{2,}$/.test(plain);
}

/** Lower case words with one space between, for comparing words whatever their case, punctuation and joins. */
export function words(text: string): string {
  return plainText(text)
    .normalize('NFKC')
    .toLowerCase()
    .replace(/'/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** What a spreadsheet makes of 3/4, 1-2 and long ids: "4-Mar", "02-Jan", "1.23E+11". */
export function looksDamaged(text: string): boolean {
  const plain = plainText(text);
  return (
    /^\d{1,2}[-\s/](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*([-\s/]\d{2,4})?$/i.test(plain) ||
    /^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-\s/]\d{1,4}$/i.test(plain) ||
    /^\d(\.\d+)?e\+\d+$/i.test(plain)
  );
}

/** Text of a free cell: the apostrophe that guards against formulas on export is taken off again. */
export function freeText(text: string): string {
  const plain = trimmed(text);
  return /^'[=+\-@]/.test(plain) ? plain.slice(1) : plain;
}
