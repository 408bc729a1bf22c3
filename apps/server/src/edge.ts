import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';

/** The two things that come from outside and not from the data: the time and fresh ids. Tests give their own. */
@Injectable()
export class Edge {
  /** Now, as an ISO date and time in UTC. */
  now(): string {
    return new Date().toISOString();
  }

  newId(): string {
    return randomUUID();
  }
}
