'use client';
import { Button } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Page';
import { counted } from '@/shared/text/number';
import type { NoteSending } from './use-note-sending';

/** Notes that the server does not have yet, why, and what can be done. `here` is the page to come back to after signing in. */
export function Unsaved({ notes, here }: { notes: NoteSending; here: string }) {
  const { waiting, trouble, discard, sendAll } = notes;
  if (waiting.length === 0) return null;
  return (
    <Notice kind="warning" live="polite" title={`${counted(waiting.length, 'note')} not saved yet`}>
      <p>
        {trouble?.message ?? 'On the way.'} {waiting.length === 1 ? 'It is' : 'They are'} kept on this device and sent
        as soon as it can be.
      </p>
      {trouble?.signedOut && (
        <p>
          <a href={`/sign-in?next=${encodeURIComponent(here)}`} target="_blank" rel="noopener">
            Sign in again in a new window
          </a>
          , then come back here.
        </p>
      )}
      <ul>
        {waiting.map((note) => (
          <li key={note.requestKey}>
            “{note.body}”{' '}
            <Button small kind="text" onClick={() => discard(note.requestKey)}>
              Discard
            </Button>
          </li>
        ))}
      </ul>
      <Button small onClick={() => void sendAll()}>
        Send now
      </Button>
    </Notice>
  );
}
