import type { Metadata } from 'next';
import Link from 'next/link';
import { NewPasswordField } from '@/app/account/new-account-fields';
import { getAccount } from '@/lib/account/account';
import { getCalendarFeed } from '@/lib/account/calendar';
import { forPage } from '@/lib/http/page';
import { schoolName } from '@/lib/http/school-provider';
import { ButtonLink } from '../_ui/Button';
import { Field } from '../_ui/Field';
import { Form, SubmitButton } from '../_ui/Form';
import { ShownLink } from '../_ui/ShownLink';
import { Notice, Page, PageHeader, Section } from '../_ui/Page';
import { When } from '../_ui/Status';
import { roleWords } from '../courses/role-words';
import {
  changeNameAction,
  changePasswordAction,
  endSessionAction,
  makeCalendarFeedAction,
  revokeCalendarFeedAction,
  signOutAction,
  signOutEverywhereAction,
} from './actions';

export const metadata: Metadata = { title: 'Your account' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function Account({ searchParams }: Props) {
  const account = await forPage(getAccount);
  const calendar = await forPage(getCalendarFeed);
  const { changed } = await searchParams;
  return (
    <Page>
      <PageHeader title={account.name} kicker="Your account" lead={account.email} />
      {changed === 'password' && (
        <Notice live="polite">Your password is changed. All other browsers are signed out.</Notice>
      )}
      <Form action={signOutAction} label="Sign out">
        <div className="actions">
          <SubmitButton>Sign out</SubmitButton>
        </div>
      </Form>
      <Section title="Courses" id="courses">
        {account.courses.length === 0 ? (
          <p>You are in no course.</p>
        ) : (
          <ul>
            {account.courses.map((course) => (
              <li key={course.id}>
                <Link href={`/courses/${course.id}`}>{course.title}</Link>, {roleWords(course.role)}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section title="Name" id="name">
        <Form action={changeNameAction} label="Name">
          <Field name="name" label="As it appears on class lists" defaultValue={account.name} autoComplete="name" />
          <div className="actions">
            <SubmitButton kind="usual">Change the name</SubmitButton>
          </div>
        </Form>
      </Section>
      <Password
        hasPassword={account.hasPassword}
        throughSchool={account.signsInThrough.length > 0}
        email={account.email}
      />
      <Sessions sessions={account.sessions} />
      <Calendar since={calendar.since} />
      <Section title="Your data" id="data" lead="What is kept here about you, in one file.">
        <div className="actions">
          <ButtonLink href="/api/account/data" plainLink download="kerncrit-my-data.json">
            Download your data (JSON)
          </ButtonLink>
          <ButtonLink href="/account/erase" kind="grave">
            Erase the account…
          </ButtonLink>
        </div>
      </Section>
    </Page>
  );
}

/** The secret address at which a calendar program reads this person's dates. */
function Calendar({ since }: { since: Date | null }) {
  return (
    <Section
      title="Calendar"
      id="calendar"
      lead="A calendar program can subscribe to your dates: when rounds open and are due for you, in its own time zone. Anyone who has the address can read them; no one’s name, work or mark is in it."
    >
      {since && (
        <p>
          You made an address on <When at={since} timeZone="UTC" />. A new one will replace it.
        </p>
      )}
      <Form action={makeCalendarFeedAction} label="Calendar address">
        <ShownLink name="calendar" label="The address" hint="Copy it now: it can’t be shown again." />
        <div className="actions">
          <SubmitButton kind="usual">{since ? 'Make a new address' : 'Make an address'}</SubmitButton>
        </div>
      </Form>
      {since && (
        <Form action={revokeCalendarFeedAction} label="Revoke the calendar address">
          <div className="actions">
            <SubmitButton kind="usual">Revoke the address</SubmitButton>
          </div>
        </Form>
      )}
    </Section>
  );
}

function Password({
  hasPassword,
  throughSchool,
  email,
}: {
  hasPassword: boolean;
  throughSchool: boolean;
  email: string;
}) {
  const school = schoolName();
  return (
    <Section
      title="Password"
      id="password"
      lead={throughSchool && school ? `You can also sign in through ${school}.` : undefined}
    >
      <Form action={changePasswordAction} label="Password">
        <input type="email" name="username" value={email} autoComplete="username" readOnly hidden />
        {hasPassword && (
          <Field name="currentPassword" label="Present password" type="password" autoComplete="current-password" />
        )}
        <NewPasswordField name="newPassword" label="New password" />
        <div className="actions">
          <SubmitButton kind="usual">{hasPassword ? 'Change the password' : 'Set a password'}</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}

type Session = { id: string; createdAt: Date; lastSeenAt: Date; thisOne: boolean };

/** The browsers that are signed in. One left signed in in a classroom can be signed out from here. */
function Sessions({ sessions }: { sessions: readonly Session[] }) {
  return (
    <Section title="Signed in" id="sessions" lead="Times are in UTC, to about five minutes.">
      <ul className="card-list">
        {sessions.map((session, index) => (
          <li key={session.id}>
            <p>
              Since <When at={session.createdAt} timeZone="UTC" short />
              {session.thisOne ? (
                ' (this browser)'
              ) : (
                <>
                  , last used <When at={session.lastSeenAt} timeZone="UTC" short />
                </>
              )}
            </p>
            {!session.thisOne && (
              <Form action={endSessionAction} inline label={`Sign out browser ${index + 1}`}>
                <input type="hidden" name="sessionId" value={session.id} />
                <SubmitButton kind="usual" small>
                  Sign it out
                </SubmitButton>
              </Form>
            )}
          </li>
        ))}
      </ul>
      <Form action={signOutEverywhereAction} label="Sign out everywhere">
        <div className="actions">
          <SubmitButton kind="usual">Sign out everywhere</SubmitButton>
        </div>
      </Form>
    </Section>
  );
}
