import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { readSelf } from '@/lib/account/read-self';
import { schoolName } from '@/lib/http/school-provider';
import { safeNext } from '@/lib/http/next-address';
import { forPage } from '@/lib/http/page';
import { publicAddress } from '@/lib/http/public-address';
import { Field } from '../_ui/Field';
import { Form } from '../_ui/Form';
import { Notice } from '../_ui/Notice';
import { Page } from '../_ui/Page';
import { PageHeader } from '../_ui/PageHeader';
import { Section } from '../_ui/Section';
import { SubmitButton } from '../_ui/SubmitButton';
import { signInAction } from './actions';
import { problemWords } from './problem-words';
import { SchoolButton } from './school-button';

export const metadata: Metadata = { title: 'Sign in' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function SignIn({ searchParams }: Props) {
  const asked = await searchParams;
  // next-auth gives the way back as a whole address of ours.
  const next = safeNext(asked.next ?? String(asked.callbackUrl ?? '').replace(publicAddress(''), ''));
  if (await forPage(readSelf)) redirect(next);
  const problem = problemWords(asked.error);
  const school = schoolName();
  return (
    <Page>
      <PageHeader title="Sign in" lead={asked.next ? 'You come back to the page you were on.' : undefined} />
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
          <Link href="/sign-in/forgotten">Forgotten?</Link>
        </div>
      </Form>
      {school && (
        <Section title={`Through ${school}`} lead="Your school knows you already.">
          <SchoolButton name={school} next={next} />
        </Section>
      )}
      <Section title="No account yet?">
        <p>An account is made when you join a course: open the link that your instructor gave you.</p>
      </Section>
    </Page>
  );
}
