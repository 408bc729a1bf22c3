/** Plain one-pass packers, kept apart from the program: what its layouts are held against. Pieces as [width, height]. */
export type Box = readonly [number, number];

const byHeight = (boxes: readonly Box[]): Box[] => [...boxes].sort((a, b) => b[1] - a[1] || b[0] - a[0]);

/** Shelf best-fit decreasing height: each piece on the shelf with least width left that holds it, else on a new shelf. */
export function plainShelves(width: number, boxes: readonly Box[]): number {
  const shelves: { room: number }[] = [];
  let height = 0;
  for (const [w, h] of byHeight(boxes)) {
    const fits = shelves.filter((shelf) => shelf.room >= w).sort((a, b) => a.room - b.room);
    if (fits[0] !== undefined) fits[0].room -= w;
    else {
      shelves.push({ room: width - w });
      height += h;
    }
  }
  return height;
}

/** Guillotine best fit: free rectangles, each piece where its shorter leftover is least, split along the shorter leftover axis. */
export function plainGuillotine(width: number, boxes: readonly Box[]): number {
  let free: { x: number; y: number; w: number; h: number }[] = [{ x: 0, y: 0, w: width, h: 1e9 }];
  let height = 0;
  for (const [w, h] of byHeight(boxes)) {
    const fits = free.filter((r) => r.w >= w && r.h >= h);
    const closed = fits.filter((r) => r.h < 1e8);
    const pool = closed.length > 0 ? closed : fits;
    const short = (r: { w: number; h: number }): number => Math.min(r.w - w, r.h - h);
    const best = pool.reduce((a, b) => (short(b) < short(a) ? b : a));
    free = free.filter((r) => r !== best);
    // The open end of the strip is always split straight across, so that a shelf as high as the piece opens.
    const across = best.h > 1e8 || best.w - w > best.h - h === false;
    free.push({ x: best.x + w, y: best.y, w: best.w - w, h: across ? h : best.h }, { x: best.x, y: best.y + h, w: across ? best.w : w, h: best.h - h });
    height = Math.max(height, best.y + h);
  }
  return height;
}
