import type { Metadata } from 'next';
import { getAccount } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';
import { ButtonLink } from '@/app/_ui/Button';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Page, PageHeader } from '@/app/_ui/Page';
import { eraseAccountAction } from '../actions';

export const metadata: Metadata = { title: 'Erase the account' };

export default async function Erase() {
  const account = await forPage(getAccount);
  return (
    <Page>
      <PageHeader
        title="Erase the account"
        trail={[{ href: '/account', label: 'Your account' }]}
        lead="This can’t be undone."
      />
      <ul>
        <li>
          Your name, your address, your password and what you wrote with your proofs are deleted, and you leave all
          courses.
        </li>
        <li>Spacings and marks stay in the course without your name, so that its figures stay true.</li>
        <li>Backups of the school keep what they have until they are replaced.</li>
      </ul>
      <Notice kind="caution">
        Marks may be records that your school has to keep, and you may need them. Ask your school first, and take your
        data with you from your account page.
      </Notice>
      <Form action={eraseAccountAction} label="Erase the account">
        <Field
          name="email"
          label="Your e-mail address, to be sure"
          type="email"
          autoComplete="off"
          spellCheck={false}
          hint={`It is ${account.email}.`}
        />
        {account.hasPassword && (
          <Field name="password" label="Password" type="password" autoComplete="current-password" />
        )}
        <div className="actions">
          <SubmitButton kind="grave">Erase my account for good</SubmitButton>
          <ButtonLink href="/account">Keep it</ButtonLink>
        </div>
      </Form>
    </Page>
  );
}
