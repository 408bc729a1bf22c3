/** Nodes by bound, the highest first; of equal ones the deeper, then the earlier (a binary heap). */
export class NodeQueue<Node extends { readonly bound: number; readonly depth: number }> {
  private readonly heap: { node: Node; at: number }[] = [];
  private added = 0;

  get size(): number {
    return this.heap.length;
  }

  first(): Node | undefined {
    return this.heap[0]?.node;
  }

  add(node: Node): void {
    this.heap.push({ node, at: this.added++ });
    for (let i = this.heap.length - 1; i > 0; ) {
      const up = (i - 1) >> 1;
      if (!this.before(i, up)) break;
      this.swap(i, up);
      i = up;
    }
  }

  take(): Node | undefined {
    const top = this.heap[0];
    const last = this.heap.pop();
    if (top === undefined || last === undefined || this.heap.length === 0) return top?.node;
    this.heap[0] = last;
    for (let i = 0; ; ) {
      let best = i;
      for (const down of [2 * i + 1, 2 * i + 2]) if (down < this.heap.length && this.before(down, best)) best = down;
      if (best === i) break;
      this.swap(i, best);
      i = best;
    }
    return top.node;
  }

  private before(a: number, b: number): boolean {
    const x = this.heap[a]!;
    const y = this.heap[b]!;
    return (x.node.bound - y.node.bound || x.node.depth - y.node.depth || y.at - x.at) > 0;
  }

  private swap(a: number, b: number): void {
    const kept = this.heap[a]!;
    this.heap[a] = this.heap[b]!;
    this.heap[b] = kept;
  }
}
