'use client';
import { lookTable } from '@/app/_line/looks';
import { Button } from '@/app/_ui/Button';
import type { Acts } from '@/app/_ui/use-keys';
import { followingWords, type Following } from '@/app/_ui/use-live';
import { counted } from '@/shared/text/number';
import type { WallChange, WallState } from '@/shared/schemas/wall';
import type { Shown } from './wall-line';
import { type Looking, wallKeys, wallLooks } from './acts';
import type { WallOf } from './projector';
import { RoomPart } from './room';
import { TwoPart } from './two-in-turn';
import type { Places } from './stage';
import style from './projector.module.css';

export type StripProps = {
  wall: WallOf;
  state: WallState;
  following: Following;
  message: string;
  looking: Looking;
  setLooking: (next: Looking) => void;
  places: Places;
  drawn: readonly Shown[];
  keysOn: boolean;
  setKeysOn: (on: boolean) => void;
  acts: Acts;
  change: (what: WallChange) => Promise<void>;
  keep: (at: { line: string; pair: number }) => void;
  close: React.ReactNode;
  columns: number;
};

/** The strip of controls: it can be hidden, and everything in it also has a key. */
export function Strip(props: StripProps) {
  const {
    wall,
    state,
    following,
    message,
    looking,
    setLooking,
    places,
    keysOn,
    setKeysOn,
    acts,
    change,
    close,
    columns,
  } = props;
  const onWall = state.lines.filter(({ out }) => !out).length;
  return (
    <div className={style.strip} data-open={looking.strip}>
      <p className={style.line}>
        <span className={style.following} data-following={following}>
          {followingWords[following]}
        </span>
        <span role="status">
          {newsOf(places, state)}
          {message && ` ${message}`}
          {following === 'over' && ' The wall is closed, or your session has ended.'}
        </span>
        {(places.waiting > 0 || places.fresh.length > 0 || places.renewed.length > 0) && (
          <KeyButton keyName={wallKeys.fresh} acts={acts}>
            {places.waiting > 0 ? 'Place them' : 'Seen'}
          </KeyButton>
        )}
        <KeyButton keyName={wallKeys.strip} acts={acts} pressed={looking.strip}>
          Controls
        </KeyButton>
      </p>
      {looking.strip && (
        <div className={style.parts}>
          <fieldset>
            <legend>Ways of looking, for all lines</legend>
            {wallLooks.map(({ look, key }) => (
              <KeyButton key={look} keyName={key} acts={acts} pressed={looking.looks[look]}>
                {lookTable[look].name}
              </KeyButton>
            ))}
            {looking.looks.three && (
              <>
                <KeyButton keyName={wallKeys.back} acts={acts}>
                  One back
                </KeyButton>
                <KeyButton keyName={wallKeys.on} acts={acts}>
                  One on
                </KeyButton>
              </>
            )}
          </fieldset>
          <fieldset>
            <legend>Overlay</legend>
            <KeyButton keyName={wallKeys.median} acts={acts} pressed={looking.median}>
              Class median
            </KeyButton>
            {state.references.length > 0 && (
              <KeyButton keyName={wallKeys.reference} acts={acts} pressed={looking.reference !== null}>
                {looking.reference === null || state.references.length === 1
                  ? 'Reference'
                  : `Reference ${looking.reference + 1} of ${state.references.length}`}
              </KeyButton>
            )}
            {looking.median && (
              <small>
                Dashed: for each pair the median of {counted(onWall, 'line')} on the wall. It is no one person’s
                spacing.
              </small>
            )}
            {looking.reference !== null && <small>Full outline: an instructor’s spacing.</small>}
          </fieldset>
          <fieldset>
            <legend>Lines</legend>
            <KeyButton keyName={wallKeys.before} acts={acts}>
              Previous line
            </KeyButton>
            <KeyButton keyName={wallKeys.next} acts={acts}>
              Next line
            </KeyButton>
            <KeyButton
              keyName={wallKeys.front}
              acts={acts}
              pressed={state.front !== null}
              disabled={state.front === null && looking.chosen === null}
            >
              {state.front === null ? 'Chosen to the front' : 'Back to all'}
            </KeyButton>
            <KeyButton keyName={wallKeys.leaveOut} acts={acts} disabled={looking.chosen === null}>
              Leave chosen out
            </KeyButton>
            <KeyButton keyName={wallKeys.larger} acts={acts} disabled={columns <= 1}>
              Larger
            </KeyButton>
            <KeyButton keyName={wallKeys.smaller} acts={acts} disabled={columns >= 4}>
              Smaller
            </KeyButton>
            <label className={style.check}>
              <input
                type="checkbox"
                checked={looking.holding}
                onChange={(event) => setLooking({ ...looking, holding: event.target.checked })}
              />{' '}
              Hold new lines until I place them
            </label>
            <Which lines={state.lines} change={change} />
          </fieldset>
          <TwoPart {...props} />
          <RoomPart {...props} />
          <fieldset>
            <legend>This wall</legend>
            <label className={style.check}>
              <input type="checkbox" checked={keysOn} onChange={(event) => setKeysOn(event.target.checked)} /> Single
              keys work on this page
            </label>
            <a className="button button-small" href={wall.back}>
              Leave it open and go back
            </a>
            {close}
            <small>
              Lines appear here without names, but people may know their own, and anyone watching a line arrive may
              guess whose it is. Leave out anyone who asks, or hold new lines and place several at once.
            </small>
          </fieldset>
        </div>
      )}
    </div>
  );
}

/** Which lines are on the wall, one by one; all or none at first. */
function Which({ lines, change }: { lines: WallState['lines']; change: StripProps['change'] }) {
  return (
    <details className={style.which}>
      <summary>
        Which lines hang here ({lines.filter(({ out }) => !out).length} of {lines.length})
      </summary>
      <Button small onClick={() => void change({ kind: 'leave all out', out: false })}>
        All
      </Button>
      <Button small onClick={() => void change({ kind: 'leave all out', out: true })}>
        None, to choose a few
      </Button>
      {lines.map(({ key, sign, out }) => (
        <label key={key} className={style.check}>
          <input
            type="checkbox"
            checked={!out}
            onChange={() => void change({ kind: 'leave out', line: key, out: !out })}
          />{' '}
          {sign}
        </label>
      ))}
    </details>
  );
}

export function KeyButton({
  keyName,
  acts,
  pressed,
  disabled,
  children,
}: {
  keyName: string;
  acts: Acts;
  pressed?: boolean;
  disabled?: boolean;
  children: React.ReactNode;
}) {
  return (
    <Button small aria-pressed={pressed} disabled={disabled} onClick={() => acts[keyName]?.()}>
      {children} <kbd aria-hidden="true">{keyName}</kbd>
    </Button>
  );
}

function newsOf({ waiting, fresh, renewed }: Places, { lines }: WallState): string {
  const signs = (keys: readonly string[]) =>
    lines
      .filter(({ key }) => keys.includes(key))
      .map(({ sign }) => sign)
      .join(', ');
  const out = lines.filter((line) => line.out).length;
  return [
    `${counted(lines.length - out, 'line')}${out > 0 ? `, ${out} left out` : ''}.`,
    waiting > 0 && `${counted(waiting, 'new line')} waiting.`,
    fresh.length > 0 && `${counted(fresh.length, 'new line')}, placed last: ${signs(fresh)}.`,
    renewed.length > 0 && `Updated: ${signs(renewed)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}
