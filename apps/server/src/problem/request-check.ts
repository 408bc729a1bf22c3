import { ValidationPipe, type ValidationError } from '@nestjs/common';
import { ProblemException, type ProblemError } from './problem.js';

const part = (name: string): string => '/' + name.replace(/~/g, '~0').replace(/\//g, '~1');

function errorsOf(faults: readonly ValidationError[], at = ''): ProblemError[] {
  return faults.flatMap((fault) => {
    const pointer = at + part(fault.property);
    const own = Object.entries(fault.constraints ?? {}).map(([code, detail]) => ({ code, detail, pointer }));
    return [...own, ...errorsOf(fault.children ?? [], pointer)];
  });
}

/** Checks bodies and queries against their classes; unknown fields are refused by name, all faults come at once. */
export const requestCheck = (): ValidationPipe =>
  new ValidationPipe({
    whitelist: true,
    forbidNonWhitelisted: true,
    transform: true,
    exceptionFactory: (faults) => {
      const errors = errorsOf(faults);
      const said = [...new Set(errors.map(({ detail }) => detail))];
      return new ProblemException(422, `What was sent cannot be used: ${said.join('; ')}.`, errors);
    },
  });
