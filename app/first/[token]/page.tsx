import type { Metadata } from 'next';
import { getFirstLink } from '@/lib/account/first-instructor';
import { getSelf } from '@/lib/account/account';
import { forPage } from '@/lib/http/page';
import { NewAccountFields } from '@/app/account/new-account-fields';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { becomeFirstInstructorAction, takeUpFirstLinkAction } from '@/app/sign-in/actions';

export const metadata: Metadata = { title: 'The first instructor', referrer: 'no-referrer' };

type Props = { params: Promise<{ token: string }> };

export default async function First({ params }: Props) {
  const { token } = await params;
  await forPage(getFirstLink, { token });
  const self = await forPage(getSelf);
  return (
    <Page>
      <PageHeader
        title="The first instructor"
        lead="No one on this server can open courses yet. This link, which works once, makes you the first instructor. Everyone else joins through links that you create."
      />
      <Form action={self ? takeUpFirstLinkAction : becomeFirstInstructorAction} label="Become the first instructor">
        <input type="hidden" name="token" value={token} />
        {self ? <p>You are signed in as {self.name}.</p> : <NewAccountFields />}
        <div className="actions">
          <SubmitButton>{self ? `Go on as ${self.name}` : 'Create account'}</SubmitButton>
        </div>
      </Form>
    </Page>
  );
}
