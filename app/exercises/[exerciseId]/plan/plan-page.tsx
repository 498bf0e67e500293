import type { ReactNode } from 'react';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';

type Props = {
  exercise: { id: string; title: string };
  title: string;
  lead?: ReactNode;
  wide?: boolean;
  children: ReactNode;
};

/** A page of the plan for one thing, with the way back. */
export function PlanPage({ exercise, title, lead, wide, children }: Props) {
  return (
    <Page width={wide ? 'wide' : 'text'}>
      <PageHeader
        title={title}
        lead={lead}
        trail={[
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `/exercises/${exercise.id}/plan`, label: 'Plan' },
        ]}
      />
      {children}
    </Page>
  );
}
