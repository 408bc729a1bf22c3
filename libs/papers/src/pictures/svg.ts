import { Resvg } from '@resvg/resvg-js';
import { PICTURE_FAMILY, PICTURE_FONTS } from '../page/fonts.js';
import { GREY, hatching, PALE, type Fill, type Picture, type Shape } from './picture.js';

const n = (value: number): string => String(Math.round(value * 100) / 100);
const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
const colour: Readonly<Record<Fill, string>> = { none: 'none', white: '#ffffff', grey: GREY, black: '#000000', hatch: '#ffffff' };
const ANCHOR = { left: 'start', right: 'end', middle: 'middle' } as const;

const lineSvg = (points: readonly (readonly [number, number])[], thickness: number, more = ''): string =>
  `<polyline points="${points.map(([x, y]) => `${n(x)},${n(y)}`).join(' ')}" fill="none" stroke="#000000" stroke-width="${n(thickness)}"${more}/>`;

function shapeSvg(shape: Shape): string {
  switch (shape.kind) {
    case 'line':
      return lineSvg(shape.points, shape.thickness, shape.dashed === true ? ' stroke-dasharray="4 3"' : '').replace('#000000', shape.pale === true ? PALE : '#000000');
    case 'dot':
      return `<circle cx="${n(shape.x)}" cy="${n(shape.y)}" r="${n(shape.radius)}" fill="${colour[shape.fill]}" stroke="#000000"/>`;
    case 'text':
      return `<text x="${n(shape.x)}" y="${n(shape.y)}" font-size="${n(shape.size)}" text-anchor="${ANCHOR[shape.align ?? 'left']}"${shape.bold === true ? ' font-weight="bold"' : ''}${shape.turned === true ? ` transform="rotate(-90 ${n(shape.x)} ${n(shape.y)})"` : ''}>${escaped(shape.text)}</text>`;
    case 'rect': {
      const frame = `stroke="#000000" stroke-width="${n(shape.thickness)}"`;
      const lines = shape.fill === 'hatch' ? hatching(shape).map((points) => lineSvg(points, 0.5)) : [];
      return `<rect x="${n(shape.x)}" y="${n(shape.y)}" width="${n(shape.width)}" height="${n(shape.height)}" fill="${colour[shape.fill]}" ${frame}/>${lines.join('')}`;
    }
  }
}

/** A picture as SVG. */
export function svgOf(picture: Picture): string {
  const { width, height, title, shapes } = picture;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}" height="${n(height)}" viewBox="0 0 ${n(width)} ${n(height)}" font-family="${PICTURE_FAMILY}">`,
    `<title>${escaped(title)}</title>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
    ...shapes.map(shapeSvg),
    '</svg>',
  ].join('\n');
}

/**
 * An SVG as PNG, set in the font that comes with the program, so that it looks the same on every machine.
 *
 * @param scale pixels a point
 */
export function pngOf(svg: string, scale = 2): Uint8Array {
  const picture = new Resvg(svg, { fitTo: { mode: 'zoom', value: scale }, font: { fontFiles: [...PICTURE_FONTS], loadSystemFonts: false, defaultFontFamily: PICTURE_FAMILY } });
  return picture.render().asPng();
}
