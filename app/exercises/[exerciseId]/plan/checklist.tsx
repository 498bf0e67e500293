import Link from 'next/link';
import type { ReactNode } from 'react';
import { ButtonLink } from '@/app/_ui/Button';
import type { Plan } from '@/lib/exercise/plan';
import { counted } from '@/shared/text/number';

/** What a draft needs before students can have it, in order, and what is there already. The rest of the plan is optional. */
export function Checklist({ plan: { exercise, specimens, rounds, checks } }: { plan: Plan }) {
  const ready = !checks.some(({ stops }) => stops);
  return (
    <ol className="checklist" aria-label="Before students see it">
      <Step done={specimens.length > 0}>
        <Link href="#specimens">Lines</Link>
        <span className="quiet">{specimens.length > 0 ? counted(specimens.length, 'line') : 'none yet'}</span>
      </Step>
      <Step done={rounds.length > 0}>
        <Link href="#rounds">Round</Link>
        <span className="quiet">{rounds.length > 0 ? counted(rounds.length, 'round') : 'none yet'}</span>
      </Step>
      <Step done={false}>
        <ButtonLink kind={ready ? 'main' : 'usual'} href={`/exercises/${exercise.id}/plan/publish`}>
          Publish…
        </ButtonLink>
      </Step>
      <li className="checklist-more quiet">
        <span>
          Optional: <Link href="#criteria">criteria</Link>, <Link href="#brief">brief and options</Link>
        </span>
      </li>
    </ol>
  );
}

function Step({ done, children }: { done: boolean; children: ReactNode }) {
  return (
    <li data-done={done || undefined}>
      {children}
      {done && <span className="visually-hidden">, done</span>}
    </li>
  );
}
