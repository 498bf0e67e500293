import type { Metadata } from 'next';
import Link from 'next/link';
import { getSelf } from '@/lib/account/account';
import { getJoinLink } from '@/lib/course/join';
import { forPage } from '@/lib/http/page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { NewAccountFields } from '@/app/account/new-account-fields';
import { asRole } from '@/app/courses/role-words';
import { Page, PageHeader, Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { joinCourseAction, joinWithNewAccountAction } from '@/app/sign-in/actions';

export const metadata: Metadata = { title: 'Join a course', referrer: 'no-referrer' };

type Props = { params: Promise<{ token: string }> };

export default async function Join({ params }: Props) {
  const { token } = await params;
  const link = await forPage(getJoinLink, { token });
  const self = await forPage(getSelf);
  const part = link.section ? `, section ${link.section}` : '';
  return (
    <Page>
      <PageHeader
        title={link.title}
        kicker="Join a course"
        lead={
          <>
            You join as {asRole(link.role)}
            {part}. The link works until <When at={link.expiresAt} timeZone={link.timeZone} />.
          </>
        }
      />
      {self ? <WithThisAccount token={token} name={self.name} /> : <WithNewAccount token={token} />}
    </Page>
  );
}

function WithThisAccount({ token, name }: { token: string; name: string }) {
  return (
    <Form action={joinCourseAction} label="Join">
      <input type="hidden" name="token" value={token} />
      <p>You are signed in as {name}.</p>
      <div className="actions">
        <SubmitButton pending="Joining…">Join as {name}</SubmitButton>
        <Link href="/account">Not you? Sign out first.</Link>
      </div>
    </Form>
  );
}

function WithNewAccount({ token }: { token: string }) {
  return (
    <>
      <p>
        Have you been in a course here before?{' '}
        <Link href={`/sign-in?next=/join/${token}`}>Sign in with your account</Link>; you’ll return to this page.
      </p>
      <Section title="Make an account">
        <Form action={joinWithNewAccountAction} label="Make an account and join">
          <input type="hidden" name="token" value={token} />
          <NewAccountFields />
          <div className="actions">
            <SubmitButton pending="Joining…">Create account and join</SubmitButton>
          </div>
        </Form>
      </Section>
    </>
  );
}
