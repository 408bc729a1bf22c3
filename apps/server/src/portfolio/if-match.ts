import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { PortfolioStore } from '#store';
import { ProblemException } from '../problem/problem.js';

/** The mark of a state of the portfolio, as ETag and If-Match have it (RFC 9110, 8.8.3 and 13.1.1). */
export const portfolioTag = (portfolioRevision: number): string => `"portfolio-${portfolioRevision}"`;

/** Lets a change in when it names no state, or the one the portfolio is in: what somebody else changed meanwhile is not written over unseen. */
@Injectable()
export class IfMatch implements CanActivate {
  constructor(private readonly store: PortfolioStore) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const wanted = context.switchToHttp().getRequest<Request>().headers['if-match'];
    if (wanted === undefined || wanted.trim() === '*') return true;
    const now = portfolioTag((await this.store.contents()).portfolioRevision);
    if (wanted.split(',').some((tag) => tag.trim() === now)) return true;
    throw new ProblemException(412, `The portfolio has changed since: it is ${now} now, If-Match names ${wanted}. Read GET /api/portfolio again.`);
  }
}
