/** Where a worker file lies: beside this one, as TypeScript under a loader or as built JavaScript. */
export interface ThreadFile {
  readonly filename: string;
  readonly execArgv: string[];
}

export function threadFile(name: string): ThreadFile {
  const here = new URL(import.meta.url);
  const source = here.pathname.endsWith('.ts');
  return {
    filename: new URL(`./${name}.worker.${source ? 'ts' : 'js'}`, here).href,
    execArgv: source ? ['--import', 'tsx', '--conditions=source'] : [],
  };
}
