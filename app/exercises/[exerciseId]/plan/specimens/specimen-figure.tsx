import type { ReactNode } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { lineWords } from '@/shared/line/line-words';
import { untouchedSpacing } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';

type Props = { pack: Pack; size: Size; ground: Ground; spacing?: Spacing; caption?: ReactNode };

/** A line on its own ground, in the face's own spacing or in a given one, at its true size where there is room. */
export function SpecimenFigure({ pack, size, ground, spacing, caption }: Props) {
  return (
    <div className="specimen-figure">
      <SheetFrame scrolls ground={ground} caption={caption ?? lineWords({ pack, size, ground })}>
        <LineDrawing pack={pack} spacing={spacing ?? untouchedSpacing(pack)} size={size} label={pack.text} />
      </SheetFrame>
    </div>
  );
}
