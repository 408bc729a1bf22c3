import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import { ProblemException } from '../problem/problem.js';

const MOST = 200;

/**
 * The Idempotency-Key of a request, undefined where none was sent: the same key and body again are the same order.
 *
 * IETF draft-ietf-httpapi-idempotency-key-header-07, October 2025.
 *
 * @throws ProblemException 400 for a key that is blank or too long
 */
export const IdempotencyKey = createParamDecorator((_data: unknown, context: ExecutionContext): string | undefined => {
  const sent = context.switchToHttp().getRequest<Request>().headers['idempotency-key'];
  if (sent === undefined) return undefined;
  const key = String(sent);
  if (key.trim() === '' || key.length > MOST) throw new ProblemException(400, `Idempotency-Key must have 1 to ${MOST} characters.`, [{ code: 'bad-key', detail: `Idempotency-Key must have 1 to ${MOST} characters` }]);
  return key;
});
