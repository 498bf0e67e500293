'use client';
import { useState, type SyntheticEvent } from 'react';
import { Button } from '@/app/_ui/Button';
import { send } from '@/app/_ui/send';
import { gapName } from '@/shared/editing/pair-words';
import { counted } from '@/shared/text/number';
import type { Shown } from './cell';
import style from './projector.module.css';

type Props = {
  wallId: string;
  at: { line: string; pair: number };
  shown: Shown | undefined;
  count: number;
  done: (words: string) => void;
};

/** Keeps what was said about a gap as a note on that student's proof. What is typed stays until it is kept or put away. */
export function KeepNote({ wallId, at, shown, count, done }: Props) {
  const [body, setBody] = useState(
    count > 0 ? `${counted(count, 'person', 'people')} in the room pointed at this gap. ` : '',
  );
  const [key] = useState(() => crypto.randomUUID());
  const [message, setMessage] = useState('');
  const [sending, setSending] = useState(false);
  if (!shown) return null;
  const name = gapName(shown.pack, at.pair);
  const keep = async (event: SyntheticEvent) => {
    event.preventDefault();
    setSending(true);
    const answer = await send<{ counts: boolean }>('POST', `/api/walls/${wallId}/notes`, {
      ...at,
      body,
      requestKey: key,
    });
    setSending(false);
    if (!answer.ok) return setMessage(`${answer.message} What you wrote is still here.`);
    done(
      answer.result.counts
        ? `Note kept at the ${name} of ${shown.line.sign}; it goes out with the release.`
        : `Note kept at the ${name} of ${shown.line.sign}. That proof came after marking began: it goes out only if you let that proof count.`,
    );
  };
  return (
    <form className={style.note} onSubmit={(event) => void keep(event)} aria-label="Keep as a note">
      <label htmlFor="wall-note">
        Note for line {shown.line.sign}, {name}
      </label>
      <textarea
        id="wall-note"
        rows={3}
        value={body}
        maxLength={4000}
        autoFocus
        onChange={(event) => setBody(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') done('');
        }}
      />
      {message && <p role="alert">{message}</p>}
      <div className="actions">
        <Button kind="main" small type="submit" disabled={sending || body.trim() === ''}>
          {sending ? 'Keeping…' : 'Keep the note'}
        </Button>
        <Button small onClick={() => done('')}>
          Close
        </Button>
      </div>
    </form>
  );
}
