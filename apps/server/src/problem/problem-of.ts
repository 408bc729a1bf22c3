import { STATUS_CODES } from 'node:http';
import { HttpException } from '@nestjs/common';
import { StoreFault } from '#store';
import { ProblemException, type Problem } from './problem.js';

const UNEXPECTED = 500;
const CONFLICT = 409;

function statusOf(fault: unknown): number {
  if (fault instanceof HttpException) return fault.getStatus();
  // What the store refuses, a person can put right: import first, take another id.
  if (fault instanceof StoreFault) return CONFLICT;
  // Body parsers of express say so themselves; anything of 500 and more is ours.
  const said = (fault as { statusCode?: unknown } | null)?.statusCode;
  return typeof said === 'number' && said >= 400 && said < UNEXPECTED ? said : UNEXPECTED;
}

function detailOf(fault: unknown, trace: string): string {
  if (statusOf(fault) >= UNEXPECTED) return `The program failed; its log says where, under ${trace}.`;
  return fault instanceof Error ? fault.message : String(fault);
}

/**
 * Any fault as a problem. A fault of ours tells nothing of its inside, only the mark under which the log has it.
 *
 * @param trace the mark of this fault in the log
 */
export function problemOf(fault: unknown, instance: string, trace: string): Problem {
  const status = statusOf(fault);
  const errors = fault instanceof ProblemException ? [...fault.errors] : [];
  return {
    type: errors.length > 0 ? 'urn:film-rollout:problem:not-usable' : 'about:blank',
    title: STATUS_CODES[status] ?? 'Error',
    status,
    detail: detailOf(fault, trace),
    instance,
    ...(errors.length > 0 && { errors }),
  };
}
