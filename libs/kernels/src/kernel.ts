import type { Catalogue } from '#catalogue';
import type { HourlyYear } from '#calc';
import { z } from 'zod';

/** What a kernel may read besides its input: built-in data and weather by path or climate KEY. */
export interface KernelRoom {
  readonly catalogue: () => Catalogue;
  readonly weather: (of: { readonly epw: string } | { readonly climate: string }) => HourlyYear;
}

/** One figure of the program, workable from outside: a checked JSON value in, a JSON value out. */
export interface Kernel {
  readonly name: string;
  /** One sentence for `compute --list`. */
  readonly about: string;
  readonly schema: () => object;
  /** @throws InputFault naming the RFC 6901 pointer when the value does not fit the schema or calc refuses it. */
  readonly run: (value: unknown, room: KernelRoom) => unknown;
}

/** A value a kernel cannot take, with the place of it. */
export class InputFault extends Error {
  constructor(
    readonly pointer: string,
    message: string,
  ) {
    super(message);
  }
}

const pointerOf = (path: readonly PropertyKey[]): string =>
  path.map((key) => '/' + String(key).replace(/~/g, '~0').replace(/\//g, '~1')).join('');

function checked<In>(schema: z.ZodType<In>, value: unknown, at: readonly PropertyKey[]): In {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  if (issue === undefined) throw new InputFault('', 'the value does not fit the schema');
  const unknown = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
  if (unknown !== undefined) throw new InputFault(pointerOf([...at, ...issue.path, unknown]), `unknown field ${unknown}`);
  throw new InputFault(pointerOf([...at, ...issue.path]), issue.message);
}

/**
 * Makes a kernel of a schema and a function of calc. An array of cases gives an array of results, in order.
 * A RangeError of calc becomes an InputFault of that case.
 */
export function defineKernel<In>(of: {
  readonly name: string;
  readonly about: string;
  readonly input: z.ZodType<In>;
  readonly run: (input: In, room: KernelRoom) => unknown;
}): Kernel {
  const one = (value: unknown, room: KernelRoom, at: readonly PropertyKey[]): unknown => {
    const input = checked(of.input, value, at);
    try {
      return of.run(input, room);
    } catch (fault) {
      if (fault instanceof RangeError) throw new InputFault(pointerOf(at), fault.message);
      throw fault;
    }
  };
  return {
    name: of.name,
    about: of.about,
    schema: () => ({ title: of.name, description: of.about, ...z.toJSONSchema(of.input, { io: 'input' }) }),
    run: (value, room) => (Array.isArray(value) ? value.map((each, i) => one(each, room, [i])) : one(value, room, [])),
  };
}
