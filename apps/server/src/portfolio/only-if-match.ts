import { applyDecorators, UseGuards } from '@nestjs/common';
import { ApiHeader } from '@nestjs/swagger';
import { ApiProblem } from '../problem/api-problem.js';
import { IfMatch } from './if-match.js';

/** A change of the portfolio that heeds If-Match. */
export const OnlyIfMatch = (): MethodDecorator =>
  applyDecorators(UseGuards(IfMatch), ApiHeader({ name: 'If-Match', required: false, description: 'ETag of GET /api/portfolio: the change is made only while the portfolio is in that state' }), ApiProblem(412, 'The portfolio has changed since'));
