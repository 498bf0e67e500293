import { exportedPairs, type ExportedSpacing } from './spacing-json';

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

/** One span a letter; white space stands between the spans as it is. @example '<p class="spaced-line"><span>A</span> <span>V</span></p>' */
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

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
