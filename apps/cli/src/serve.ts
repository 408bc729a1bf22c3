import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Starts the server program beside this one and waits for it. @returns its exit code */
export function serve(options: { readonly port: string; readonly database: string }): Promise<number> {
  const server = fileURLToPath(new URL('../../server/src/main.js', import.meta.url));
  const child = spawn(process.execPath, [server, '--port', options.port, '--database', options.database], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
  return new Promise((ended) => child.on('exit', (code) => ended(code ?? 0)));
}
