import type { ReactNode } from 'react';
import { Notice, Page, PageHeader } from '@/app/_ui/Page';

type Props = {
  exercise: { id: string; title: string };
  title: string;
  lead?: ReactNode;
  wide?: boolean;
  children: ReactNode;
};

/** A page of the plan for one thing, with a link back. */
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

/** Shown wherever an exercise has lines that could end up on a sign people’s safety depends on. */
export function SignCaution() {
  return (
    <Notice kind="caution" title="Signs that people’s safety depends on">
      Spacing on traffic, exit, safety and accessibility signs is set by codes and standards and not by eye. What is
      done here is an exercise; on a real sign, the local code and a licensed practitioner decide.
    </Notice>
  );
}
