import { lineShapes, pathTexts, type Place } from '@/shared/line/shapes';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';

/** A spacing that is exported, with the line it belongs to. */
export type ExportedSpacing = { pack: Pack; spacing: Spacing; size: Size; ground: 'light' | 'dark'; licence: string };

/** A pair by its parts, all in 1/1000 em; `total` is what must be added to the advance of the left letter. */
type ExportedPair = {
  left: string;
  right: string;
  builtIn: number;
  tracking: number;
  offset: number;
  total: number;
  wordSpace: boolean;
};

/** Pairs of a line with built-in, tracking, offset and their sum. */
export function exportedPairs({ pack, spacing }: Pick<ExportedSpacing, 'pack' | 'spacing'>): ExportedPair[] {
  const letters = pack.letters.map((glyph) => pack.glyphs[glyph]!.cluster);
  return spacing.offsets.map((offset, index) => {
    const builtIn = Math.round((pack.builtIn[index]! / pack.unitsPerEm) * 1_000_000) / 1000;
    return {
      left: letters[index]!,
      right: letters[index + 1]!,
      builtIn,
      tracking: spacing.tracking,
      offset,
      total: Math.round((builtIn + spacing.tracking + offset) * 1000) / 1000,
      wordSpace: pack.wordSpace[index]! > 0,
    };
  });
}

/** The spacing as JSON in a format of our own, for other programs to read: every number says its unit. */
export function spacingJson(exported: ExportedSpacing): string {
  const { pack, size, ground, licence } = exported;
  return `${JSON.stringify(
    {
      format: 'kerncrit-spacing',
      version: 1,
      unit: '1/1000 em',
      text: pack.text,
      size,
      ground,
      face: pack.face && {
        family: pack.face.family,
        style: pack.face.style,
        weight: pack.face.weight,
        italic: pack.face.italic,
        axes: pack.face.axes,
        licence,
      },
      tracking: exported.spacing.tracking,
      pairs: exportedPairs(exported),
    },
    null,
    2,
  )}\n`;
}

/**
 * The spacing as CSS with the markup it needs. Each letter is a span whose letter-spacing is the total of the gap after
 * it. Spans break kerning in browsers, so the built-in values are in the totals and the browser's own are switched off.
 * Figures are the proportional ones, as on the bench.
 */
export function spacingCss({ pack, spacing, size, licence }: ExportedSpacing): string {
  const pairs = exportedPairs({ pack, spacing });
  const face = pack.face;
  const rules = pairs.flatMap(({ total }, index) =>
    total === 0 ? [] : [`.spaced-line > span:nth-of-type(${index + 1}) { letter-spacing: ${em(total)}; }`],
  );
  const comment = (text: string) => text.replaceAll('*/', '* /');
  return [
    `/* ${comment(pack.text)}: ${face ? comment(`${face.family} ${face.style}`) : 'lettering'}, ${size.value} ${size.unit}. Exported by Kerncrit.`,
    `   The face is not part of this file. Licence of the face: ${comment(licence)}`,
    '   Markup:',
    `   ${comment(
      markup(
        pack.text,
        pack.letters.map((glyph) => pack.glyphs[glyph]!.cluster),
      ),
    )} */`,
    '.spaced-line {',
    ...(face
      ? [
          `  font-family: ${JSON.stringify(face.family)};`,
          `  font-weight: ${face.weight};`,
          `  font-style: ${face.italic ? 'italic' : 'normal'};`,
        ]
      : []),
    ...(face && Object.keys(face.axes).length > 0
      ? [
          `  font-variation-settings: ${Object.entries(face.axes)
            .map(([tag, value]) => `"${tag}" ${value}`)
            .join(', ')};`,
        ]
      : []),
    `  font-size: ${size.value}${size.unit};`,
    '  font-kerning: none;',
    '  font-variant-ligatures: none;',
    '  font-variant-numeric: proportional-nums;',
    '  letter-spacing: 0;',
    '  white-space: pre;',
    '}',
    ...rules,
    '',
  ].join('\n');
}

/** Thousandths of an em as CSS em, without an exponent. @example em(-12) // '-0.012em' */
const em = (perMille: number): string => `${Number((perMille / 1000).toFixed(6))}em`;

/**
 * One span a letter; white space between the spans is kept.
 * @example '<p class="spaced-line"><span>A</span> <span>V</span></p>'
 */
export function markup(text: string, letters: readonly string[]): string {
  let rest = text;
  const spans = letters.map((letter) => {
    const at = rest.indexOf(letter);
    const before = at > 0 ? rest.slice(0, at) : '';
    rest = rest.slice(Math.max(0, at) + letter.length);
    return `${escaped(before)}<span>${escaped(letter)}</span>`;
  });
  return `<p class="spaced-line">${spans.join('')}${escaped(rest)}</p>`;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/**
 * The line as an SVG of plain outlines at its true size, one path in font units with the baseline at 0. The licence of
 * the face is stored in the file, since the outlines are the face's.
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
