'use client';

import { useEffect, useState, useSyncExternalStore } from 'react';
import { opposite } from '@/app/_line/inks';
import { Button } from '@/app/_ui/Button';
import { classes } from '@/app/_ui/classes';
import { type Looking, MEDIAN, REFERENCE, turnSeconds, wallKeys } from './acts';
import style from './projector.module.css';
import { KeyButton, type StripProps } from './strip';
import { type Shown, WallLine } from './wall-line';

type Props = {
  two: readonly Shown[];
  looking: Looking;
  em: number;
  width: number;
  setLooking: (next: Looking) => void;
};

const nothingOver: never[] = [];

/** Two lines in one place, alternating slowly; one under the other where the system asks for less motion. */
export function TwoInTurn({ two, looking, em, width, setLooking }: Props) {
  const { second, swap, still } = useTurn(!looking.paused, looking.seconds);
  const now = two[second ? 1 : 0]!;
  return (
    <div className={style.turn}>
      {(still ? two : [now]).map((shown) => {
        const ground = looking.looks.opposite ? opposite(shown.ground) : shown.ground;
        return (
          <div key={still ? shown.line.key : 'both'} className={classes('sheet', 'sheet-bare', `sheet-${ground}`)}>
            <p className={style.turnSign}>{shown.line.sign}</p>
            <WallLine
              pack={shown.pack}
              spacing={shown.line.spacing}
              ground={ground}
              looks={looking.looks}
              window={looking.window}
              em={em}
              width={width}
              over={nothingOver}
            />
          </div>
        );
      })}
      <p className={style.turnWords}>
        <span>
          {two.map(({ line }) => line.sign).join(' and ')},{' '}
          {still
            ? 'one under the other, since your system asks for less motion'
            : looking.paused
              ? 'paused'
              : `each for ${looking.seconds} s`}
        </span>
        {!still && (
          <Button small onClick={() => setLooking({ ...looking, paused: !looking.paused })}>
            {looking.paused ? 'Go on' : 'Pause'}
          </Button>
        )}
        {!still && (
          <Button small onClick={swap}>
            The other one
          </Button>
        )}
      </p>
    </div>
  );
}

/** Which two alternate, and how slowly. */
export function TwoPart({ state, looking, setLooking, drawn, acts }: StripProps) {
  const choices = [
    ...drawn.map(({ line }) => ({ key: line.key, words: `Line ${line.sign}` })),
    { key: MEDIAN, words: 'Class median' },
    ...state.references.map((_, index) => ({
      key: index === 0 ? REFERENCE : `${REFERENCE} ${index + 1}`,
      words: `Reference${index === 0 ? '' : ` ${index + 1}`}`,
    })),
  ];
  const pick = (which: 'one' | 'two', name: string, key: string) => (
    <label className={style.check}>
      {name}{' '}
      <select
        value={looking[which] ?? ''}
        onChange={(event) => setLooking({ ...looking, [which]: event.target.value || null })}
      >
        <option value="">–</option>
        {choices.map((choice) => (
          <option key={choice.key} value={choice.key}>
            {choice.words}
          </option>
        ))}
      </select>{' '}
      <kbd aria-hidden="true">{key}</kbd>
    </label>
  );
  return (
    <fieldset>
      <legend>Two in turn</legend>
      {pick('one', 'One', wallKeys.one)}
      {pick('two', 'Other', wallKeys.two)}
      <KeyButton
        keyName={wallKeys.turn}
        acts={acts}
        pressed={looking.turning}
        disabled={looking.one === null || looking.two === null || looking.one === looking.two}
      >
        In turn
      </KeyButton>
      <KeyButton keyName={wallKeys.pause} acts={acts} pressed={looking.paused} disabled={!looking.turning}>
        Pause
      </KeyButton>
      <label className={style.check}>
        Each for{' '}
        <select
          value={looking.seconds}
          onChange={(event) => setLooking({ ...looking, seconds: Number(event.target.value) })}
        >
          {turnSeconds.map((seconds) => (
            <option key={seconds} value={seconds}>
              {seconds} s
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}

/** Which of two is shown now. It alternates by itself, never with reduced motion, and by `swap`. */
function useTurn(running: boolean, seconds: number): { second: boolean; swap: () => void; still: boolean } {
  const [second, setSecond] = useState(false);
  const still = useReducedMotion();
  useEffect(() => {
    if (!running || still) return;
    const timer = window.setInterval(() => setSecond((is) => !is), Math.max(0.5, seconds) * 1000);
    return () => window.clearInterval(timer);
  }, [running, seconds, still]);
  return { second, swap: () => setSecond((is) => !is), still };
}

const query = '(prefers-reduced-motion: reduce)';

function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => window.matchMedia(query).matches,
    () => false,
  );
}
