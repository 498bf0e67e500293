import { When } from '@/app/_ui/When';
import { Disclosure } from '@/app/_ui/Disclosure';

type Act = { id: string; verb: string; who: string | null; whom: string | null; at: Date };

export function Acts({ acts, timeZone }: { acts: readonly Act[]; timeZone: string }) {
  if (acts.length === 0) return <p>Nothing yet.</p>;
  return (
    <Disclosure summary={`The newest ${acts.length}`}>
      <ol role="list">
        {acts.map((act) => (
          <li key={act.id}>
            <When at={act.at} timeZone={timeZone} />: {act.verb}{act.whom && <> ({act.whom})</>}, by {act.who ?? 'the server or somebody who was erased'}
          </li>
        ))}
      </ol>
    </Disclosure>
  );
}
