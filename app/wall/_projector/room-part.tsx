'use client';
import { Button } from '@/app/_ui/Button';
import { gapName } from '@/shared/editing/pair-words';
import { counted } from '@/shared/text/number';
import { wallKeys } from './keys';
import { KeyButton, type StripProps } from './strip';
import style from './projector.module.css';

/** So many gaps are listed; the rest is on the lines. */
const listed = 6;

/** What the room does: asked or not, collected or shown, and what is kept of it. */
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
