import { ProblemException } from './problem.js';

/**
 * What calc refuses of a request as a problem: its messages say "name must be range, got value", so the name is the field.
 *
 * @param fields pointer of the field by that name; a name not listed is its own field
 */
export async function refusedAsProblem<T>(work: () => T | Promise<T>, fields: Readonly<Record<string, string>> = {}): Promise<T> {
  try {
    return await work();
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
    const name = /^(\w+)(?: \S+)? must /.exec(fault.message)?.[1];
    const pointer = name === undefined ? undefined : (fields[name] ?? `/${name}`);
    throw new ProblemException(422, `What was sent cannot be used: ${fault.message}.`, [{ code: 'out-of-range', detail: fault.message, ...(pointer !== undefined && { pointer }) }]);
  }
}
