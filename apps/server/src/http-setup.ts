import type { NestExpressApplication } from '@nestjs/platform-express';
import helmet from 'helmet';
import { ApiDescription } from './api-description.controller.js';
import { Edge } from './edge.js';
import { ownMachineOnly } from './own-machine.js';
import { knownKind } from './problem/known-kind.js';
import { ProblemFilter } from './problem/problem-filter.js';
import { requestCheck } from './problem/request-check.js';

/** What every answer goes through, in the program and in the tests alike. */
export function setUpHttp(app: NestExpressApplication): void {
  app.use(
    helmet({
      // The server speaks plain http on this machine: asking browsers for https would lock them out.
      strictTransportSecurity: false,
      contentSecurityPolicy: { directives: { scriptSrc: ["'none'"], styleSrc: ["'self'"], upgradeInsecureRequests: null } },
    }),
  );
  app.use(ownMachineOnly);
  app.use(knownKind);
  app.useGlobalFilters(new ProblemFilter(app.get(Edge)));
  app.useGlobalPipes(requestCheck());
  app.get(ApiDescription).describe(app);
}
