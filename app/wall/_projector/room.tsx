'use client';

import { type SyntheticEvent, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { send } from '@/app/_ui/send';
import { gapName } from '@/shared/editing/pair-words';
import { counted } from '@/shared/text/number';
import { wallKeys } from './acts';
import style from './projector.module.css';
import { KeyButton, type StripProps } from './strip';
import type { Shown } from './wall-line';

/** This many gaps are listed; the rest is visible on the lines. */
const listed = 6;

/** What the room does: whether it was asked, whether points are being collected or shown, and the note made of them. */
export function RoomPart({ state, drawn, acts, looking, change, keep }: StripProps) {
  const shown = new Map(drawn.map((one) => [one.line.key, one]));
  const most = [...state.counts].sort((one, other) => other.count - one.count).slice(0, listed);
  return (
    <fieldset>
      <legend>Where the room looks</legend>
      <span>{roomWords(state)}</span>
      <KeyButton keyName={wallKeys.room} acts={acts} pressed={state.pointing === 'show'}>
        Show it
      </KeyButton>
      <Button small onClick={() => void change({ kind: 'ask anew' })}>
        Ask anew (forgets all points)
      </Button>
      <Button
        small
        aria-pressed={state.pointing === 'off'}
        onClick={() => void change({ kind: 'pointing', to: state.pointing === 'off' ? 'collect' : 'off' })}
      >
        No pointing
      </Button>
      <KeyButton keyName={wallKeys.link} acts={acts} pressed={looking.link}>
        Link for phones
      </KeyButton>
      {most.length > 0 && (
        <ul className={style.counts}>
          {most.map(({ line, pair, count }) => {
            const one = shown.get(line);
            return (
              one && (
                <li key={`${line} ${pair}`}>
                  <Button small onClick={() => keep({ line, pair })}>
                    {count} at the {gapName(one.pack, pair)} of {one.line.sign}: keep as a note…
                  </Button>
                </li>
              )
            );
          })}
        </ul>
      )}
    </fieldset>
  );
}

function roomWords({ pointing, pointed }: StripProps['state']): string {
  if (pointing === 'off') return 'Phones may not point now.';
  const who = pointed === 0 ? 'No points yet' : pointed === 1 ? '1 phone points' : `${counted(pointed, 'phone')} point`;
  return pointing === 'collect' ? `${who}; hidden until you show it.` : `${who}.`;
}

type NoteProps = {
  wallId: string;
  at: { line: string; pair: number };
  shown: Shown | undefined;
  count: number;
  done: (words: string) => void;
};

/**
 * Saves what was discussed about a gap as a note on that student's proof. Typed text stays until it is saved or
 * discarded.
 */
export function SaveNote({ wallId, at, shown, count, done }: NoteProps) {
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

/** The short link: the address as it is typed, and as a QR code. */
export type LinkTo = { address: string; modules: number; path: string };

/** Addresses that work only on this computer. */
const here = /^https?:\/\/(localhost|127\.|\[::1\])/;

export function Link({ link }: { link: LinkTo }) {
  return (
    <section className={style.link} aria-label="Link for phones">
      <svg
        viewBox={`0 0 ${link.modules} ${link.modules}`}
        role="img"
        aria-label={`QR code of ${link.address}`}
        shapeRendering="crispEdges"
      >
        <rect className={style.qrGround} width={link.modules} height={link.modules} />
        <path className={style.qrInk} d={link.path} />
      </svg>
      <p>
        Point at a gap with your phone:
        <br />
        <strong>{link.address.replace(/^https?:\/\//, '')}</strong>
        <br />
        <small>
          No signing in, and no name is asked for. It ends when the wall is closed.
          {here.test(link.address) &&
            ' This address works on this computer only. For phones, the server needs its public address.'}
        </small>
      </p>
    </section>
  );
}
