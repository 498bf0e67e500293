import type { Pack } from '@/shared/schemas/pack';
import type { PlacedLine } from '@/shared/outline/place-letters';
import type { FontUnits } from '@/shared/units';

/** From the leftmost to the rightmost ink, in font units. */
export type Span = { readonly from: FontUnits; readonly to: FontUnits };

const known = new WeakMap<Pack, Map<number, Span>>();

/** Where the ink of the letters `from`–`to` begins and ends on the line: a line stands flush by its ink, whatever room its first letter carries. */
export function inkEdges(pack: Pack, { letters }: PlacedLine, { from, to }: { from: number; to: number }): Span {
  const [first, last] = [letters[from]!, letters[to]!];
  return { from: first.x + inkOf(pack, first.glyph).from, to: last.x + inkOf(pack, last.glyph).to };
}

function inkOf(pack: Pack, glyph: number): Span {
  const kept = known.get(pack) ?? new Map<number, Span>();
  known.set(pack, kept);
  const found = kept.get(glyph) ?? spanOf(pack.glyphs[glyph]!);
  kept.set(glyph, found);
  return found;
}

/** By the points on the curve; faces have one at each extreme. A letter without ink spans its advance. */
function spanOf({ path, advance }: Pack['glyphs'][number]): Span {
  const xs = [...path.matchAll(/[MLQC]([^MLQCZ]*)/g)].map(([, numbers]) => Number(numbers!.split(' ').at(-2)));
  return xs.length === 0 ? { from: 0, to: advance } : { from: Math.min(...xs), to: Math.max(...xs) };
}
