import type { Metadata } from 'next';
import { mailIsSetUp } from '@/lib/mail/send';
import { ButtonLink } from '@/app/_ui/Button';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { requestPasswordLinkAction } from '../actions';

export const metadata: Metadata = { title: 'A new password' };

export default function Forgotten() {
  return mailIsSetUp() ? <ByMail /> : <InPerson />;
}

function ByMail() {
  return (
    <Page>
      <PageHeader
        title="A new password"
        trail={[{ href: '/sign-in', label: 'Sign in' }]}
        lead="We send a link to your address; it works once and for two hours."
      />
      <Form action={requestPasswordLinkAction} label="Send the link">
        <Field
          name="email"
          label="E-mail address"
          type="email"
          autoComplete="username"
          inputMode="email"
          spellCheck={false}
        />
        <div className="actions">
          <SubmitButton pending="Sending…">Send the link</SubmitButton>
        </div>
      </Form>
    </Page>
  );
}

function InPerson() {
  return (
    <Page>
      <PageHeader
        title="A new password"
        trail={[{ href: '/sign-in', label: 'Sign in' }]}
        lead="This server sends no mail, so a person helps you."
      />
      <p>
        Ask an instructor of your course, best in person. On their page about you they can make a link that works once,
        for a day, and sets a new password.
      </p>
      <p>
        If you are an instructor yourself, ask the person who runs the server, who can create a link at its console.
      </p>
      <div className="actions">
        <ButtonLink href="/sign-in">Back to signing in</ButtonLink>
      </div>
    </Page>
  );
}
