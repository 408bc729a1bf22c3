import 'reflect-metadata';
import { parseArgs } from 'node:util';
import { ConsoleLogger } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { StoreFault } from '#store';
import { AppModule } from './app.module.js';
import { setUpHttp } from './http-setup.js';
import { makers } from './work/makers.js';

const HOST = '127.0.0.1';

const { values } = parseArgs({
  options: {
    port: { type: 'string', default: process.env.FILM_ROLLOUT_PORT ?? '3000' },
    database: { type: 'string', default: process.env.FILM_ROLLOUT_DATABASE ?? 'rollout.sqlite' },
    // Weather files that buildings name are looked for here.
    weather: { type: 'string', default: process.env.FILM_ROLLOUT_WEATHER ?? '.' },
    json: { type: 'boolean', default: false },
  },
});

async function serve(): Promise<void> {
  const logger = new ConsoleLogger({ json: values.json, logLevels: ['error', 'warn'] });
  const app = await NestFactory.create<NestExpressApplication>(AppModule.forRoot({ database: values.database, makers: makers(values.weather) }), { logger, abortOnError: false });
  setUpHttp(app);
  app.enableShutdownHooks();
  await app.listen(Number(values.port), HOST);
  // The address may hold a password.
  const database = values.database.replace(/\/\/[^@/]*@/, '//');
  console.log(`Film Rollout answers on http://${HOST}:${new URL(await app.getUrl()).port}; the database is ${database}. Ctrl+C ends it.`);
}

try {
  await serve();
} catch (fault) {
  const { code } = fault as { code?: unknown };
  if (code === 'EADDRINUSE') console.error(`Port ${values.port} is in use; name another with --port.`);
  else if (code === 'ERR_SOCKET_BAD_PORT') console.error(`--port must be 0 to 65535, got ${values.port}.`);
  else console.error(fault instanceof StoreFault ? fault.message : fault);
  // A half-started application would keep the program alive.
  process.exit(1);
}
