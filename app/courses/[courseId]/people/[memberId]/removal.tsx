import type { ReactNode } from 'react';
import { Form } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { putBackMemberAction, removeMemberAction } from './actions';
import { WhichFields, type Which } from './which';

/** Can be undone at once on the same page, so it does not ask first. */
export function Removal({ which, name, self }: { which: Which; name: string; self: boolean }) {
  return (
    <Section title={self ? 'Leave the course' : 'Remove from the course'} id="removal">
      <p>
        {self
          ? 'You lose the course at once and are signed out. Another instructor can put you back.'
          : `${name} is signed out and can’t open the course any more. Their work is kept, and you can put them back.`}
      </p>
      <Form action={removeMemberAction} label={self ? 'Leave the course' : 'Remove from the course'}>
        <WhichFields {...which} />
        <div className="actions">
          <SubmitButton kind="grave">{self ? 'Leave the course' : `Remove ${name}`}</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}

export function PutBack({ which, at }: { which: Which; at: ReactNode }) {
  return (
    <Form action={putBackMemberAction} label="Put back">
      <WhichFields {...which} />
      <p>Since {at} this person can’t open the course. Their work is kept.</p>
      <div className="actions">
        <SubmitButton kind="usual">Put back</SubmitButton>
      </div>
    </Form>
  );
}
