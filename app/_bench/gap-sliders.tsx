import { useCallback, useEffect, useImperativeHandle, useRef, type Ref } from 'react';
import { sameDocument } from '@/shared/editing/document';
import { gapName, gapValueWords, pairAmounts } from '@/shared/editing/pair-words';
import { prepareLine } from '@/shared/measure/prepared-line';
import { type Frame, isSameFrame, xOf } from '../_line/frame';
import type { Drawn } from './drawing/line-canvas';
import { besideOf, excessOf, excessWords, opennessOf } from './openness';
import { useSession } from './context';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import { type BenchState, current } from './session/state';
import type { CssPx } from '@/shared/units';
import styles from './bench.module.css';

export type SlidersHandle = { place(drawn: Drawn): void; focus(pair: number): void };

/** Reach of a slider to either side, while no offset is larger. */
const REACH = 200;

/**
 * Time after the last change until the sliders of the other gaps move to where their gaps are now, ms; they aren't
 * needed before.
 */
const LATER_MS = 600;

/** Half the width of a slider, CSS px. */
export const sliderReach = (em: CssPx): CssPx => Math.max(12, 0.09 * em);

/**
 * One slider per gap, on top of it. They are native sliders, so that assistive technology can move them; the keyboard
 * reaches the chosen one, and their values follow the state without React.
 */
export function GapSliders({ ref }: { ref: Ref<SlidersHandle> }) {
  const session = useSession();
  const { pack } = session.props;
  const inputs = useRef<(HTMLInputElement | null)[]>([]);
  const placesRef = useRef<string[]>([]);
  const lastRef = useRef<Drawn | null>(null);
  const frameRef = useRef<Frame | null>(null);
  const laterRef = useRef<ReturnType<typeof setTimeout>>(undefined);

  const placeGaps = useCallback(({ frame, placed, em }: Drawn, which: (gap: number) => boolean) => {
    const half = sliderReach(em);
    for (const gap of placed.gaps) {
      const input = inputs.current[gap.index];
      const at = `translateX(${(xOf(frame, gap.centre) - half).toFixed(1)}px)`;
      if (!input || placesRef.current[gap.index] === at || !which(gap.index)) continue;
      placesRef.current[gap.index] = at;
      Object.assign(input.style, { transform: at, width: `${(2 * half).toFixed(0)}px` });
    }
  }, []);

  const place = useCallback(
    (drawn: Drawn) => {
      lastRef.current = drawn;
      clearTimeout(laterRef.current);
      // They follow once the drag pauses: only the painted marks of the chosen one are visible.
      if (session.store.settled.get() !== session.store.get()) return;
      const { head } = session.store.get().chosen;
      const onlyLetters = frameRef.current !== null && isSameFrame(frameRef.current, drawn.frame);
      frameRef.current = drawn.frame;
      placeGaps(drawn, onlyLetters ? (gap) => gap === head : () => true);
      if (onlyLetters) laterRef.current = setTimeout(() => placeGaps(drawn, () => true), LATER_MS);
    },
    [session, placeGaps],
  );
  useEffect(() => () => clearTimeout(laterRef.current), []);

  useImperativeHandle(
    ref,
    () => ({
      place,
      focus: (pair) => inputs.current[pair]?.focus({ preventScroll: true }),
    }),
    [place],
  );

  useEffect(() => {
    let reported: BenchState | null = null;
    const tell = () => {
      const state = session.store.settled.get();
      if (lastRef.current) place(lastRef.current);
      const first = reported === null;
      if (!first && reported && state.chosen === reported.chosen && sameDocument(current(state), current(reported)))
        return;
      tellAll(inputs.current, session.props, state, first ? null : reported);
      reported = state;
    };
    tell();
    return session.store.settled.subscribe(tell);
  }, [session, place]);

  return (
    <div className={styles.sliders} role="group" aria-label={`Gaps of “${pack.text}”`}>
      {pack.builtIn.map((_, pair) => (
        <input
          key={pair}
          ref={(input) => void (inputs.current[pair] = input)}
          type="range"
          className={styles.slider}
          data-gap={pair}
          min={-REACH}
          max={REACH}
          step={1}
          defaultValue={0}
          tabIndex={pair === 0 ? 0 : -1}
          aria-label={gapName(pack, pair)}
          onFocus={(event) => {
            const { chosen } = session.store.get();
            const byKeys = event.currentTarget.matches(':focus-visible');
            if (byKeys !== session.store.get().byKeys) session.store.set({ byKeys });
            const within = pair >= Math.min(chosen.anchor, chosen.head) && pair <= Math.max(chosen.anchor, chosen.head);
            if (!within) session.choose(pair);
          }}
          onBlur={() => {
            if (session.store.get().byKeys) session.store.setByHand({ byKeys: false });
          }}
          onInput={(event) =>
            session.edit({
              kind: 'set offset',
              run: { first: pair, last: pair },
              offset: Number(event.currentTarget.value),
            })
          }
        />
      ))}
    </div>
  );
}

/** Updates every slider whose gap has changed; all of them the first time. */
function tellAll(
  inputs: (HTMLInputElement | null)[],
  props: ReturnType<typeof useSession>['props'],
  state: BenchState,
  before: BenchState | null,
): void {
  const document = current(state);
  const previous = before && current(before);
  const speaks = props.accommodations?.speakGaps || tellsAtLeast(props.tells, 'evenness');
  const line = prepareLine(props.pack);
  const openness = speaks ? opennessOf(line, document) : null;
  inputs.forEach((input, pair) => {
    if (!input) return;
    const tabIndex = pair === state.chosen.head ? 0 : -1;
    if (input.tabIndex !== tabIndex) input.tabIndex = tabIndex;
    const same =
      previous && previous.offsets[pair] === document.offsets[pair] && previous.tracking === document.tracking;
    if (same && pair !== state.chosen.head) return;
    const offset = document.offsets[pair] ?? 0;
    const reach = String(Math.max(REACH, Math.ceil(Math.abs(offset) / REACH) * REACH));
    if (input.max !== reach) {
      input.max = reach;
      input.min = `-${reach}`;
    }
    input.value = String(offset);
    const words = gapValueWords(pairAmounts(props.pack, document, pair));
    const open = openness ? excessWords(excessOf(line, document, openness, pair), besideOf(line)) : null;
    input.setAttribute('aria-valuetext', open ? `${words}. ${open}` : words);
  });
}
