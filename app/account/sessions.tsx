import { Form } from '../_ui/Form';
import { Section } from '../_ui/Section';
import { SubmitButton } from '../_ui/SubmitButton';
import { When } from '../_ui/When';
import { endSessionAction, signOutEverywhereAction } from './actions';

type Session = { id: string; createdAt: Date; lastSeenAt: Date; thisOne: boolean };

/** The browsers that are signed in. A browser forgotten in a classroom is signed out from here. */
export function Sessions({ sessions }: { sessions: readonly Session[] }) {
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
