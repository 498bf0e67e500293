import Link from 'next/link';
import { Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import type { RoundView } from '@/lib/rows/exercise';
import { counted } from '@/shared/text/number';

type Part = { id: string; name: string; students: number; released: number };
type Props = { round: RoundView; sections: readonly Part[]; here: string; timeZone: string };

/** The sections of the course with their dates in this round; each leads to where its own are set. */
export function SectionsPart({ round, sections, here, timeZone }: Props) {
  if (sections.length === 0) return null;
  return (
    <Section id="sections" title="Dates for a section" lead="A section can have its own dates in this round.">
      <ul className="card-list">
        {sections.map(({ id, name, students, released }) => (
          <li key={id}>
            <h3>{released > 0 ? name : <Link href={`${here}/sections/${id}`}>{name}</Link>}</h3>
            <p>
              <Dates own={round.sections.find(({ sectionId }) => sectionId === id)} timeZone={timeZone} />
            </p>
            <p className="quiet note-size">
              {counted(students, 'student')}
              {released > 0 && `; released to ${released}, so its dates are fixed`}.
            </p>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Dates({ own, timeZone }: { own: RoundView['sections'][number] | undefined; timeZone: string }) {
  if (!own || (own.opensAt === null && own.dueAt === null)) return 'The round’s own dates.';
  return (
    <>
      {own.opensAt && (
        <>
          Opens <When at={own.opensAt} timeZone={timeZone} />.{' '}
        </>
      )}
      {own.dueAt && (
        <>
          Due <When at={own.dueAt} timeZone={timeZone} />.
        </>
      )}
    </>
  );
}
