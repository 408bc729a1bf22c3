import { STATUS_CODES } from 'node:http';
import { applyDecorators } from '@nestjs/common';
import { ApiExtraModels, ApiResponse, getSchemaPath } from '@nestjs/swagger';
import { Problem } from './problem.js';

/** Says in the API's description that an operation may answer with this problem. */
export const ApiProblem = (status: number, description = STATUS_CODES[status] ?? ''): MethodDecorator & ClassDecorator =>
  applyDecorators(
    ApiExtraModels(Problem),
    ApiResponse({ status, description, content: { 'application/problem+json': { schema: { $ref: getSchemaPath(Problem) } } } }),
  );
