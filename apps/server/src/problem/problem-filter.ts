import { Catch, Logger, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { Edge } from '../edge.js';
import { page } from '../start-page/page.js';
import { problemPage } from '../start-page/problem-page.js';
import { problemOf } from './problem-of.js';

/** The pages a person uses stand beside the API and are asked for as HTML. */
const isForPerson = (request: Request): boolean => !request.path.startsWith('/api/') && request.accepts(['json', 'html']) === 'html';

/** Answers every fault as application/problem+json: unknown addresses, wrong values and our own failures alike. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  readonly #log = new Logger('http');

  constructor(private readonly edge: Edge) {}

  catch(fault: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const request = http.getRequest<Request>();
    const response = http.getResponse<Response>();
    const trace = this.edge.newId();
    const problem = problemOf(fault, request.originalUrl, trace);
    if (problem.status >= 500) this.#log.error(`${trace} ${request.method} ${request.originalUrl}`, fault instanceof Error ? fault.stack : String(fault));
    // An answer that has begun cannot become another one; cutting it off tells the reader that it is not whole.
    if (response.headersSent) response.destroy();
    else if (isForPerson(request)) response.status(problem.status).type('html').send(page(problem.title, problemPage(problem)));
    else response.status(problem.status).type('application/problem+json').send(JSON.stringify(problem));
  }
}
