import type { HalfList } from './half-list.js';

/** The first combinations of a list in cells over their use of the dearest limits, small losses first in each cell. */
export class HalfGrid {
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly cell: Float64Array;

  constructor(
    list: HalfList,
    count: number,
    /** Rows the cells run along, and their width in each. */
    of: { readonly axes: readonly number[]; readonly width: readonly number[] },
  ) {
    let size = 16;
    while (size < count) size *= 2;
    this.head = new Int32Array(size).fill(-1);
    this.next = new Int32Array(count);
    this.cell = new Float64Array(count);
    for (let i = count - 1; i >= 0; i--) {
      let cell = 0;
      for (let k = 0; k < of.axes.length; k++) cell = inCell(cell, Math.floor(list.change[i * list.rows + of.axes[k]!]! / of.width[k]!));
      const slot = this.slot(cell);
      this.cell[i] = cell;
      this.next[i] = this.head[slot]!;
      this.head[slot] = i;
    }
  }

  private slot(cell: number): number {
    const mixed = Math.imul(cell | 0, 0x9e3779b1) ^ Math.imul((cell / 4294967296) | 0, 0x85ebca6b);
    return (mixed ^ (mixed >>> 15)) & (this.head.length - 1);
  }

  first(cell: number): number {
    let i = this.head[this.slot(cell)]!;
    while (i >= 0 && this.cell[i] !== cell) i = this.next[i]!;
    return i;
  }

  after(combination: number): number {
    const cell = this.cell[combination]!;
    let i = this.next[combination]!;
    while (i >= 0 && this.cell[i] !== cell) i = this.next[i]!;
    return i;
  }
}

/** One number for a cell, axis by axis: places along an axis are below 2^16 in magnitude by the choice of width. */
export function inCell(before: number, place: number): number {
  return before * 131_072 + place + 65_536;
}
