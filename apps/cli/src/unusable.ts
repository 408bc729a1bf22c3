/** A value or a file of the command line that cannot be used; the program ends with the exit code for that. */
export class Unusable extends Error {
  readonly exitCode = 2;
}

/** A whole number of the command line. @throws Unusable for anything else, or below the least */
export function wholeNumber(text: string, option: string, least: number): number {
  const number = Number(text);
  if (text.trim() === '' || !Number.isInteger(number) || number < least) throw new Unusable(`${option} must be a whole number from ${String(least)}, got ${text}`);
  return number;
}

const FAILED = 1;
const REFUSED = 2;

/** What the program ends with and says of a fault: help asked for is none; a value out of range or a file that is not there is the caller's. */
export function endOf(fault: unknown): { readonly code: number; readonly says: string | null } {
  const { code, exitCode, path } = fault as { readonly code?: string; readonly exitCode?: number; readonly path?: string };
  // The parser of options has already said what is wrong.
  if (code?.startsWith('commander.') === true) return { code: exitCode === 0 ? 0 : REFUSED, says: null };
  if (code === 'ENOENT' && path !== undefined) return { code: REFUSED, says: `There is no file or folder ${path}.` };
  const says = fault instanceof Error ? fault.message : String(fault);
  return { code: exitCode ?? (fault instanceof RangeError ? REFUSED : FAILED), says };
}
