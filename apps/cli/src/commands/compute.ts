import { readFileSync, writeFileSync } from 'node:fs';
import { text } from 'node:stream/consumers';
import type { AddCommand } from './command.js';

interface ComputeOptions {
  readonly list?: boolean;
  readonly schema?: boolean;
  readonly in?: string;
  readonly out?: string;
}

function emit(value: unknown, out: string | undefined): void {
  const line = JSON.stringify(value, null, 2) + '\n';
  if (out === undefined) process.stdout.write(line);
  else writeFileSync(out, line);
}

/** Runs a kernel. @returns exit code: 0 done, 2 a value that cannot be used (one JSON object on standard error says which) */
async function computed(name: string | undefined, options: ComputeOptions): Promise<number> {
  const { allKernels, InputFault, kernelRoom } = await import('#kernels');
  if (options.list === true) {
    for (const kernel of allKernels) process.stdout.write(`${kernel.name.padEnd(22)}${kernel.about}\n`);
    return 0;
  }
  const kernel = allKernels.find((k) => k.name === name);
  const refuse = (pointer: string, message: string): number => {
    process.stderr.write(JSON.stringify({ kernel: name ?? null, pointer, message }) + '\n');
    return 2;
  };
  if (kernel === undefined) return refuse('', `no such kernel; the kernels are ${allKernels.map((k) => k.name).join(', ')}`);
  if (options.schema === true) {
    emit(kernel.schema(), options.out);
    return 0;
  }
  let value: unknown;
  try {
    value = JSON.parse(options.in === undefined ? await text(process.stdin) : readFileSync(options.in, 'utf8'));
  } catch (fault) {
    return refuse('', `the input is not one JSON value: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
  try {
    emit(kernel.run(value, kernelRoom()), options.out);
    return 0;
  } catch (fault) {
    if (fault instanceof InputFault) return refuse(fault.pointer, fault.message);
    throw fault;
  }
}

export const compute: AddCommand = (program) => {
  program
    .command('compute [kernel]')
    .description('work one figure again: one JSON value in, one out')
    .option('--list', 'the kernels, one a line')
    .option('--schema', 'the JSON Schema of the kernel')
    .option('--in <file>', 'read the value from a file instead of standard input')
    .option('--out <file>', 'write the result to a file instead of standard output')
    .action(async (kernel: string | undefined, options: ComputeOptions) => {
      process.exitCode = await computed(kernel, options);
    });
};
