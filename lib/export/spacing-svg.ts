import { lineShapes, pathTexts, type Place } from '@/shared/line/shapes';
import { placeLetters } from '@/shared/outline/place-letters';
import { escaped } from './spacing-css';
import type { ExportedSpacing } from './spacing-json';

/**
 * The line as an SVG of plain outlines at its true size, one path in font units with the baseline at 0.
 * The licence of the face is kept in the file, since the outlines are the face's.
 */
export function spacingSvg({ pack, spacing, size, ground, licence }: ExportedSpacing): string {
  const line = placeLetters(pack, spacing);
  const { ascender, ascenderTop, descender } = pack.vertical;
  const top = Math.max(ascender, ascenderTop);
  const height = top - descender;
  const length = (units: number) => `${Number(((units / pack.unitsPerEm) * size.value).toFixed(3))}${size.unit}`;
  const [ink, sheet] = ground === 'dark' ? ['#ffffff', '#000000'] : ['#000000', '#ffffff'];
  const face = pack.face ? `${pack.face.family} ${pack.face.style}` : 'lettering';
  const about = `${face}, ${size.value} ${size.unit}. Outlines exported by Kerncrit. Licence of the face: ${licence}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${length(line.width)}" height="${length(height)}" viewBox="0 ${-top} ${Number(line.width.toFixed(2))} ${height}">`,
    `  <title>${escaped(pack.text)}</title>`,
    `  <desc>${escaped(about)}</desc>`,
    `  <metadata xmlns:dcterms="http://purl.org/dc/terms/"><dcterms:license>${escaped(licence)}</dcterms:license><dcterms:source>${escaped(face)}</dcterms:source></metadata>`,
    `  <rect x="0" y="${-top}" width="100%" height="100%" fill="${sheet}"/>`,
    ...lineShapes({ pack, spacing })
      .flatMap((shape) => (shape.kind === 'path' ? pathTexts(shape.pieces) : []))
      .map(({ path, place }) => `  <path transform="scale(1 -1)${turned(place)}" fill="${ink}" d="${path}"/>`),
    '</svg>',
    '',
  ].join('\n');
}

/** Letters that are turned are brought to their places one by one; type has none. */
const turned = (place: Place | null): string =>
  place ? ` translate(${place.dx} ${place.dy}) rotate(${place.turn / 10})` : '';
