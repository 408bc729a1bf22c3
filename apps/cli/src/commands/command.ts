import type { Command } from 'commander';

/** Adds one command to the program. Its file loads only what --help needs; the action loads the rest when it is asked for. */
export type AddCommand = (program: Command) => void;

/** Options most commands share. */
export interface Shared {
  readonly json?: boolean;
  readonly database?: string;
  readonly quiet?: boolean;
  readonly all?: boolean;
}

/** Exit codes of the command line; 2 is a value or a file that cannot be used. */
export const DONE = 0;
export const WITH_REJECTS = 3;

export const DATABASE_OPTION = ['--database <place>', 'SQLite file or postgres:// address', 'rollout.sqlite'] as const;

/** For options that may be given again. */
export const collect = (value: string, before: string[]): string[] => [...before, value];

export const print = (value: unknown, text: () => string, json: boolean | undefined): void => {
  process.stdout.write((json === true ? JSON.stringify(value, null, 2) : text()) + '\n');
};
