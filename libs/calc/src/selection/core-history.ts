/** Above this many nodes the dead ones are cleared out. */
const FIRST_CLEARING = 1 << 20;

/**
 * How each state of the core search came about: a tree of changes, child to parent. A state that keeps the item of the
 * break choice shares the node of the state before it. Nodes no living state leads back to are cleared from time to time.
 */
export class CoreHistory {
  private parent = new Int32Array(1024);
  private item = new Int32Array(1024);
  private size = 0;
  private clearAt = FIRST_CLEARING;

  /** Adds "item on top of parent" and gives its node; −1 is the break choice itself. */
  add(parent: number, item: number): number {
    if (this.size === this.parent.length) {
      const larger = (old: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> => {
        const grown = new Int32Array(old.length * 2);
        grown.set(old);
        return grown;
      };
      this.parent = larger(this.parent);
      this.item = larger(this.item);
    }
    this.parent[this.size] = parent;
    this.item[this.size] = item;
    return this.size++;
  }

  /** Items of a node, last change first. */
  itemsOf(node: number): number[] {
    const items: number[] = [];
    for (let at = node; at >= 0; at = this.parent[at]!) items.push(this.item[at]!);
    return items;
  }

  get nodes(): number {
    return this.size;
  }

  /** Drops nodes that none of `living` leads back to and renumbers `living` in place; parents always stand before children. */
  clear(living: Int32Array): void {
    if (this.size < this.clearAt) return;
    const reached = new Uint8Array(this.size);
    for (const node of living) {
      for (let at = node; at >= 0 && reached[at] === 0; at = this.parent[at]!) reached[at] = 1;
    }
    const moved = new Int32Array(this.size);
    let kept = 0;
    for (let at = 0; at < this.size; at++) {
      if (reached[at] === 0) continue;
      const parent = this.parent[at]!;
      this.parent[kept] = parent < 0 ? -1 : moved[parent]!;
      this.item[kept] = this.item[at]!;
      moved[at] = kept++;
    }
    for (let i = 0; i < living.length; i++) living[i] = living[i]! < 0 ? -1 : moved[living[i]!]!;
    this.size = kept;
    this.clearAt = Math.max(FIRST_CLEARING, kept * 2);
  }
}
