import { When } from './Status';

type Own = { name: string; opensAt?: Date | null; dueAt: Date | string | null };

/** The sections with dates of their own in a round, one a line. */
export function SectionDates({ sections, timeZone }: { sections: readonly Own[]; timeZone: string }) {
  const own = sections.filter(({ opensAt, dueAt }) => opensAt || dueAt);
  if (own.length === 0) return null;
  return (
    <ul role="list" className="note-size">
      {own.map(({ name, opensAt, dueAt }) => (
        <li key={name}>
          {name}:{' '}
          {opensAt && (
            <>
              opens <When at={opensAt} timeZone={timeZone} short />
              {dueAt && ', '}
            </>
          )}
          {dueAt && (
            <>
              due <When at={dueAt} timeZone={timeZone} short />
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
