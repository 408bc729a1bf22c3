import type { NextFunction, Request, RequestHandler, Response } from 'express';
import { ProblemException } from './problem/problem.js';

const OWN = new Set(['127.0.0.1', 'localhost', '[::1]']);
const hostName = (address: string): string => {
  try {
    return new URL(address).hostname;
  } catch {
    return '';
  }
};

/**
 * Lets in only what the person at this machine asked for. There is no log-in yet, so a page of another site, open in the
 * same browser, must not be able to read or change the portfolio: neither through a name that points here (Host) nor by
 * sending a form here (Origin).
 */
export const ownMachineOnly: RequestHandler = (request: Request, _response: Response, next: NextFunction) => {
  const { host, origin } = request.headers;
  if (!OWN.has(hostName(`http://${host ?? ''}`))) throw new ProblemException(421, 'This server answers to this machine only.');
  if (origin !== undefined && !OWN.has(hostName(origin))) throw new ProblemException(403, 'A page of another site may not use this server.');
  next();
};
