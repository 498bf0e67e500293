import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { getSelf } from '@/lib/account/account';
import { safeNext } from '@/lib/http/next-address';
import { forPage } from '@/lib/http/page';
import { publicAddress } from '@/lib/http/public-address';
import { schoolName } from '@/lib/http/school-provider';
import { Field } from '../_ui/Field';
import { Form, SubmitButton } from '../_ui/Form';
import { Notice, Page, PageHeader, Section } from '../_ui/Page';
import { signInAction } from './actions';
import { SchoolButton } from './school-button';

export const metadata: Metadata = { title: 'Sign in' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function SignIn({ searchParams }: Props) {
  const asked = await searchParams;
  // next-auth gives the page to return to as a full address of ours.
  const next = safeNext(asked.next ?? String(asked.callbackUrl ?? '').replace(publicAddress(''), ''));
  if (await forPage(getSelf)) redirect(next);
  const problem = problemWords(asked.error);
  const school = schoolName();
  return (
    <Page>
      <PageHeader title="Sign in" lead={asked.next ? 'You’ll return to the page you were on.' : undefined} />
      {problem && (
        <Notice kind="warning" live="assertive">
          {problem}
        </Notice>
      )}
      <Form action={signInAction} label="Sign in">
        <input type="hidden" name="next" value={next} />
        <Field
          name="email"
          label="E-mail address"
          type="email"
          autoComplete="username"
          inputMode="email"
          spellCheck={false}
        />
        <Field name="password" label="Password" type="password" autoComplete="current-password" />
        <div className="actions">
          <SubmitButton pending="Signing in…">Sign in</SubmitButton>
          <Link href="/sign-in/forgotten">Forgotten your password?</Link>
        </div>
      </Form>
      {school && (
        <Section title={`Through ${school}`} lead="Your school knows you already.">
          <SchoolButton name={school} next={next} />
        </Section>
      )}
      <Section title="No account yet?">
        <p>You get an account when you join a course: open the link from your instructor.</p>
      </Section>
    </Page>
  );
}

/** What went wrong at another sign-in, by the code in the address. An unknown code gets a general message. */
function problemWords(error: string | string[] | undefined): string | null {
  if (typeof error !== 'string' || error === '') return null;
  return known[error] ?? 'Signing in did not work this time. Please try once more.';
}

const known: Record<string, string> = {
  NotVerified:
    'Your school’s sign-in did not confirm an e-mail address for you, so it can’t be tied to an account here. Ask the people who run it to confirm your address, or sign in with a password.',
  AccessDenied: 'Your school’s sign-in said no. Try again, or ask the people who run it.',
  OAuthSignin: 'Your school’s sign-in could not be reached. Try again in a minute, or sign in with a password.',
  OAuthCallback: 'Your school’s sign-in gave no usable answer, or it took too long. Please start again.',
  Configuration: 'Signing in is not set up correctly on this server. The reason is in the server’s log.',
};
