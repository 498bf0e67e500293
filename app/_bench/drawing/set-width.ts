import type { Pack } from '@/shared/schemas/pack';
import { placeLetters, untouchedSpacing } from '@/shared/outline/place-letters';

/** Width of the line as the face gives it, in em: a measure that stays while the line is being spaced. */
export function setWidthOf(pack: Pack): number {
  return placeLetters(pack, untouchedSpacing(pack)).width / pack.unitsPerEm;
}
