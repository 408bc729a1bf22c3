import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const folder = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf');

/** Faces of the papers: the only free ones with all signs used here (½ ≥ ° × ☐ ✓), digits all of one width; condensed, so that more stands on a page at the same height. */
export const FONT_FILES = { regular: join(folder, 'DejaVuSansCondensed.ttf'), bold: join(folder, 'DejaVuSansCondensed-Bold.ttf') } as const;
/** Faces of the pictures in workbooks and pages. */
export const PICTURE_FONTS = [join(folder, 'DejaVuSans.ttf'), join(folder, 'DejaVuSans-Bold.ttf')] as const;
export const PICTURE_FAMILY = 'DejaVu Sans';
