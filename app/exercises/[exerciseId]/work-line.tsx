import Link from 'next/link';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { Work } from '@/lib/work/overview';
import { withUnit } from '@/shared/text/number';
import { togetherHref } from './together/together-href';

/** `settings`: how many lines of the exercise are of these words. */
type Props = { exerciseId: string; line: Work['lines'][number]; place: number; settings: number };

/** One line of the exercise: as it stands now, what it is, and how far it has come. */
export function WorkLine({ exerciseId, line, place, settings }: Props) {
  const { pack, size, ground } = line;
  return (
    <li className="work-line">
      <Link
        href={`/exercises/${exerciseId}/bench/${line.specimenId}`}
        aria-label={`Line ${place}: ${line.text}. ${standing(line)}. Space it on the bench`}
      >
        <SheetFrame ground={ground}>
          <LineDrawing pack={pack} spacing={line.spacing} label={null} />
        </SheetFrame>
      </Link>
      <p className="work-line-words">
        <span>
          {place}. {pack.face ? `${pack.face.family} ${pack.face.style}` : 'Lettering'},{' '}
          {withUnit(size.value, size.unit)}, {ground} ground
          {line.remark && <>. {line.remark}</>}
        </span>
        <strong>{standing(line)}</strong>
        <span>
          <Link href={`/exercises/${exerciseId}/bench/${line.specimenId}?trial=1`}>
            Try it without sending<span className="visually-hidden"> (line {place})</span>
          </Link>
          {settings > 1 && (
            <>
              ,{' '}
              <Link href={togetherHref(exerciseId, line.text)}>
                all {settings} settings of it<span className="visually-hidden"> (line {place})</span>
              </Link>
            </>
          )}
        </span>
      </p>
    </li>
  );
}

function standing(line: Work['lines'][number]): string {
  if (line.draftVersion === 0) return 'As the face comes';
  return line.changedSinceSent ? 'Changed since the last proof' : 'As last sent';
}
