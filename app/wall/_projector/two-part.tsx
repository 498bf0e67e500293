'use client';
import type { StripProps } from './strip';
import { KeyButton } from './strip';
import { wallKeys } from './keys';
import { MEDIAN, REFERENCE, turnSeconds } from './looking';
import style from './projector.module.css';

/** Which two are shown in turn, and how slowly. */
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
