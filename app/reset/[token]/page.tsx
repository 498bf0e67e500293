import type { Metadata } from 'next';
import { getPasswordLink } from '@/lib/account/password-links';
import { forPage } from '@/lib/http/page';
import { NewPasswordField } from '@/app/account/new-account-fields';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { resetPasswordAction } from '@/app/sign-in/actions';

export const metadata: Metadata = { title: 'A new password', referrer: 'no-referrer' };

type Props = { params: Promise<{ token: string }> };

export default async function Reset({ params }: Props) {
  const { token } = await params;
  const link = await forPage(getPasswordLink, { token });
  return (
    <Page>
      <PageHeader
        title="A new password"
        lead={`For ${link.name} (${link.email}). All browsers that are signed in with the old one are signed out.`}
      />
      <Form action={resetPasswordAction} label="Set the password">
        <input type="hidden" name="token" value={token} />
        {/* Lets a password manager know which account the password belongs to. */}
        <input type="email" name="username" value={link.email} autoComplete="username" readOnly hidden />
        <NewPasswordField name="newPassword" label="New password" />
        <div className="actions">
          <SubmitButton>Set the password and sign in</SubmitButton>
        </div>
      </Form>
    </Page>
  );
}
