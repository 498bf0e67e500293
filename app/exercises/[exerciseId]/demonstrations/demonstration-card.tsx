import Link from 'next/link';
import { When } from '@/app/_ui/When';
import type { DemonstrationView } from '@/lib/demonstration/demonstration-view';
import { counted } from '@/shared/text/number';
import { SpecimenFigure } from '../plan/specimens/specimen-figure';
import { RemoveForm, ShowForm } from './show-form';

type Props = {
  exerciseId: string;
  one: DemonstrationView & { mayChange: boolean };
  teaches: boolean;
  timeZone: string;
};

/** One demonstration: how the line stands at its end, who made it, and whether the course sees it. */
export function DemonstrationCard({ exerciseId, one, teaches, timeZone }: Props) {
  const { title, author, recorded, reasons, createdAt, shownAt } = one;
  return (
    <li>
      <SpecimenFigure
        {...one}
        spacing={one.last}
        caption={
          <>
            <Link href={`/exercises/${exerciseId}/demonstrations/${one.id}`}>{title}</Link>, on “{one.text}” by {author}
            : {counted(recorded.steps.length, 'step')}, {counted(reasons, 'reason')}
          </>
        }
      />
      {teaches && (
        <div className="actions note-size">
          <span>
            <When at={createdAt} timeZone={timeZone} short /> ·{' '}
            {shownAt ? <strong>the course sees it</strong> : 'not shown'}
          </span>
          {one.mayChange && <ShowForm one={one} shown={shownAt !== null} />}
          {one.mayChange && <RemoveForm one={one} removed={false} />}
        </div>
      )}
    </li>
  );
}
