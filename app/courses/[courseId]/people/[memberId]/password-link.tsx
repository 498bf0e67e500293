import { Form } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Section';
import { ShownLink } from '@/app/_ui/ShownLink';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { handOverPasswordLinkAction } from './actions';
import { WhichFields, type Which } from './which';

type State = 'yourself' | 'by mail' | 'teaches' | 'can be made';

export function PasswordLink({ which, name, state }: { which: Which; name: string; state: State }) {
  if (state === 'yourself') return null;
  return (
    <Section title="A forgotten password" id="password">
      {state === 'by mail' && <p>“Forgotten?” on the sign-in page sends {name} a letter with a link.</p>}
      {state === 'teaches' && (
        <p>{name} teaches, so only whoever runs the server can make a link for a new password, at its console.</p>
      )}
      {state === 'can be made' && (
        <Form action={handOverPasswordLinkAction} label="A link for a new password">
          <WhichFields {...which} />
          <p>
            Make a link and give it to {name} in person. Whoever opens it can sign in as {name}, so make sure that it is
            them; that you made it is written down.
          </p>
          <div className="actions">
            <SubmitButton kind="usual">Make a link for a new password</SubmitButton>
          </div>
          <ShownLink
            name="passwordLink"
            label="The link"
            hint="Copy it now: it can’t be shown again. It works once, for a day; a new one ends it."
          />
        </Form>
      )}
    </Section>
  );
}
