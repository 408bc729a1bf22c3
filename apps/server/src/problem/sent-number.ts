import { Transform } from 'class-transformer';

/** A number of a form or an address arrives as text; anything that is none is left as it came, for the check to refuse. */
export const SentNumber = (): PropertyDecorator =>
  Transform(({ value }: { value: unknown }) => (typeof value === 'string' && value.trim() !== '' ? Number(value) : value));

/** "true" and "false" of a form or an address: the text "false" is true to a plain conversion. */
export const SentFlag = (): PropertyDecorator =>
  Transform(({ obj, key }: { obj: Record<string, unknown>; key: string }) => (obj[key] === 'true' ? true : obj[key] === 'false' ? false : obj[key]));
