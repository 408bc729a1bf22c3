import type { NextFunction, Request, RequestHandler, Response } from 'express';
import { ProblemException } from './problem.js';

const KINDS = ['application/json', '+json', 'multipart/form-data', 'application/x-www-form-urlencoded'];

/** Refuses a body nobody here reads: left alone, it would pass for an empty one, and a plan be made of defaults. */
export const knownKind: RequestHandler = (request: Request, _response: Response, next: NextFunction) => {
  // Null without a body, false for a body of another kind or of none.
  const kind = request.headers['content-length'] === '0' ? null : request.is(KINDS);
  if (kind === false) throw new ProblemException(415, 'What is sent must be application/json or multipart/form-data.', [{ code: 'unknown-kind', detail: `what was sent is ${request.headers['content-type'] ?? 'of no stated kind'}` }]);
  next();
};
