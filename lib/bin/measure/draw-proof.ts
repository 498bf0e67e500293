import { pairProfiles, pairWhite, prepareLine } from '@/shared/measure';
import { placeLetters, shiftedPath } from '@/shared/outline/place-letters';
import type { LineMeasure } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';

const MARGIN = 120;
const RULER = 360;

/**
 * The line as SVG: letters, the white between them, the edges as drawn and as seen, and under each gap
 * its apparent gap as a bar beside the line's centre. 1/1000 em, y down.
 */
export function drawProof(pack: Pack, spacing: Spacing, measure: LineMeasure): string {
  const scale = 1000 / pack.unitsPerEm;
  const placed = placeLetters(pack, spacing);
  const line = prepareLine(pack);
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop) * scale;
  const bottom = -pack.vertical.descender * scale;
  const width = placed.width * scale + 2 * MARGIN;
  const height = top + bottom + RULER + 2 * MARGIN;
  const dark = measure.ground === 'dark';
  const gaps = measure.pairs.map((pair, index) => {
    const origin = placed.letters[index]!.x * scale;
    const profiles = pairProfiles(line, index, pair.total);
    const lines = [...profiles.leftDrawn, ...profiles.rightDrawn].map((points) => polyline(points, origin, 'drawn'));
    const seen = [profiles.leftSeen, profiles.rightSeen].map((points) => polyline(points, origin, 'seen'));
    return `<g><title>${escaped(`${pair.left}${pair.right}: apparent gap ${pair.apparentGap}, built-in ${pair.builtIn}, offset ${pair.offset}`)}</title>${polygon(pairWhite(line, index, pair.total), origin)}${lines.join('')}${seen.join('')}</g>`;
  });
  const bars = measure.pairs.map((pair, index) => {
    const x = placed.gaps[index]!.centre * scale;
    const y = bottom + 60;
    return `<rect class="bar" x="${two(x - 12)}" y="${two(y)}" width="24" height="${two(pair.apparentGap)}"/><text x="${two(x)}" y="${two(y + pair.apparentGap + 34)}">${escaped(`${Math.round(pair.apparentGap)}`)}</text>`;
  });
  const centre =
    measure.line.reference === null
      ? ''
      : `<path class="centre" d="M0 ${two(bottom + 60 + measure.line.reference)}H${two(placed.width * scale)}"/>`;
  const letters = placed.letters.map(
    (letter) => `<path d="${shiftedPath(pack.glyphs[letter.glyph]!.path, letter.x)}"/>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" viewBox="${two(-MARGIN)} ${two(-top - MARGIN)} ${two(width)} ${two(height)}" width="${two(width / 2)}" height="${two(height / 2)}">
<title>${escaped(pack.text)}</title>
<desc>${escaped(`${pack.face ? `Set in ${pack.face.family} ${pack.face.style}. ` : ''}These are outlines of a face: its licence says whether they may be passed on. Figures are thousandths of an em.`)}</desc>
<style>.ground{fill:${dark ? '#1b1b1b' : '#fff'}}.ink{fill:${dark ? '#f2f0ea' : '#161616'}}.white{fill:#d97a2b;fill-opacity:.22}.drawn{fill:none;stroke:#b3531a;stroke-width:3}.seen{fill:none;stroke:#2f6f9f;stroke-width:3;stroke-dasharray:9 7}.bar{fill:#8a8275}.centre{fill:none;stroke:#2f6f9f;stroke-width:3}text{font:28px sans-serif;text-anchor:middle;fill:${dark ? '#f2f0ea' : '#161616'}}</style>
<rect class="ground" x="${two(-MARGIN)}" y="${two(-top - MARGIN)}" width="${two(width)}" height="${two(height)}"/>
<g class="ink" transform="scale(${scale} ${-scale})">${letters.join('')}</g>
<g transform="scale(1 -1)">${gaps.join('\n')}</g>
<g>${bars.join('')}${centre}</g>
</svg>
`;
}

function polyline(points: number[], shift: number, kind: string): string {
  return `<polyline class="${kind}" points="${pointsOf(points, shift)}"/>`;
}

function polygon(points: number[], shift: number): string {
  return `<polygon class="white" points="${pointsOf(points, shift)}"/>`;
}

function pointsOf(points: number[], shift: number): string {
  return points.map((value, index) => two(index % 2 === 0 ? value + shift : value)).join(' ');
}

function two(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}
