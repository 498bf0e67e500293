import Link from 'next/link';
import { When } from '@/app/_ui/When';
import { Disclosure } from '@/app/_ui/Disclosure';

type Act = { id: string; verb: string; who: string | null; whom: string | null; at: Date };

type Props = { acts: readonly Act[]; older: string | null; before: string | null; here: string; timeZone: string };

/** A page of the log of acts, the newest first; closed until it is asked for, open when older ones were. */
export function Acts({ acts, older, before, here, timeZone }: Props) {
  if (acts.length === 0) return <p>Nothing yet.</p>;
  return (
    <Disclosure
      summary={before === null ? `The newest ${acts.length}` : `${acts.length} older ones`}
      open={before !== null}
    >
      <ol role="list">
        {acts.map((act) => (
          <li key={act.id}>
            <When at={act.at} timeZone={timeZone} />: {act.verb}
            {act.whom && <> ({act.whom})</>}, by {act.who ?? 'the server or somebody who was erased'}
          </li>
        ))}
      </ol>
      {(before !== null || older !== null) && (
        <nav aria-label="Pages of the log" className="actions">
          {before !== null && (
            <Link href={`${here}#acts`} prefetch={false}>
              The newest acts
            </Link>
          )}
          {older !== null && (
            <Link href={`${here}?before=${older}#acts`} prefetch={false} rel="next">
              Older acts
            </Link>
          )}
        </nav>
      )}
    </Disclosure>
  );
}
