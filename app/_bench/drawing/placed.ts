import { placeLetters, type PlacedLine } from '@/shared/outline/place-letters';
import { spacingOf, type SpacingDocument } from '@/shared/editing/document';
import type { Pack } from '@/shared/schemas/pack';

const known = new WeakMap<SpacingDocument, { readonly pack: Pack; readonly placed: PlacedLine }>();

/** Where the letters stand, worked out once for all drawings of a setting. */
export function placedOf(pack: Pack, document: SpacingDocument): PlacedLine {
  const found = known.get(document);
  if (found?.pack === pack) return found.placed;
  const placed = placeLetters(pack, spacingOf(document));
  known.set(document, { pack, placed });
  return placed;
}
