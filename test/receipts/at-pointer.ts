import { allKernels, kernelRoom } from '#kernels';
import type { Receipt, ReceiptPart } from '#planning';

const room = kernelRoom();

/** The numbers at a pointer; `*` stands for every entry of a list. */
function at(value: unknown, pointer: string): number[] {
  const found = pointer.split('/').slice(1).reduce<unknown[]>((from, key) => from.flatMap((each) => (key === '*' ? (each as unknown[]) : [(each as Record<string, unknown>)[key]])), [value]);
  if (!found.every((each) => typeof each === 'number')) throw new Error(`nothing to read at ${pointer}`);
  return found;
}

const sumOf = (result: unknown, parts: readonly ReceiptPart[]): number => parts.reduce((sum, part) => sum + part.times * at(result, part.pointer).reduce((a, b) => a + b, 0), 0);

/** What the kernel gives for a receipt's input; the input goes through JSON as it would through a file. */
export function byKernel(receipt: Receipt): number {
  const { compute } = receipt;
  const kernel = allKernels.find((k) => k.name === compute?.kernel);
  if (compute === null || kernel === undefined) throw new Error(`${receipt.figure} names no kernel`);
  const result = kernel.run(JSON.parse(JSON.stringify(compute.input)), room);
  const value = sumOf(result, compute.result) / (compute.over === undefined ? 1 : sumOf(result, compute.over)) + (compute.plus ?? 0);
  return compute.isRounded === true ? Math.round(value) : value;
}
