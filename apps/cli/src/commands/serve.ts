import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type AddCommand, DATABASE_OPTION } from './command.js';

/** Starts the server program beside this one and waits for it. @returns its exit code */
function start(options: { readonly port: string; readonly database: string }): Promise<number> {
  const server = fileURLToPath(new URL('../../../server/src/main.js', import.meta.url));
  const child = spawn(process.execPath, [server, '--port', options.port, '--database', options.database], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
  return new Promise((ended) => child.on('exit', (code) => ended(code ?? 0)));
}

export const serve: AddCommand = (program) => {
  program
    .command('serve')
    .description('answer over HTTP on this machine (127.0.0.1)')
    .option('--port <n>', 'port', '3000')
    .option(...DATABASE_OPTION)
    .action(async (options: { readonly port: string; readonly database: string }) => {
      process.exitCode = await start(options);
    });
};
