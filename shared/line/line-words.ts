import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';

/** What a line is, wherever it is shown: “Lato Bold, 72 px, dark ground”. */
export const lineWords = ({ pack, size, ground }: { pack: Pack; size: Size; ground: Ground }): string =>
  `${pack.face ? `${pack.face.family} ${pack.face.style}` : 'Lettering'}, ${withUnit(size.value, size.unit, 1)}, ${ground} ground`;
