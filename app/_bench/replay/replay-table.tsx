'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { stepWords } from '@/shared/demonstration/steps';
import type { DemonstrationStep } from '@/shared/schemas/demonstration';
import { withUnit } from '@/shared/text/number';
import type { CssPx } from '@/shared/units';
import bench from '../bench.module.css';
import { BenchContext, useBench, useSession } from '../context';
import { opposite } from '@/app/_line/inks';
import { LineCanvas } from '../drawing/line-canvas';
import { setWidthOf } from '@/app/_line/frame';
import { sizeInPx, workingEm } from '../drawing/sizes';
import { type SingleKeyAct, useSingleKeys } from '../input/keys';
import { setZoom } from '../input/pointer';
import { KeysPanel } from '../panels/keys-panel';
import { Compare, Legend, LooksPanel } from '../panels/looks-panel';
import type { BenchProps, DemonstrationProps } from '../props';
import type { LookName } from '@/shared/line/looks';
import { pxPerMmNow } from '../session/screen';
import type { BenchSession } from '../session/session';
import type { BenchState } from '../session/state';
import { openReplay } from './replay-session';
import { replayTo, usePlaying, useReducedMotion } from './replay';
import { ReplayControls } from './replay-controls';
import styles from './replay.module.css';

/** Each step is shown at least this long during play, ms. */
const STEP_MS = 2200;

/**
 * A recorded demonstration, step by step: the line at its true size and large, with the changed gaps marked and the
 * reason beside them.
 */
export function ReplayTable(props: DemonstrationProps & Pick<BenchProps, 'tells'>) {
  const [session] = useState(() => openReplay(props));
  return (
    <BenchContext value={session}>
      <Table steps={props.recorded.steps} />
    </BenchContext>
  );
}

function Table({ steps }: { steps: DemonstrationProps['recorded']['steps'] }) {
  const session = useSession();
  const { pack, size, ground, personKey } = session.props;
  const sheet = useRef<HTMLDivElement>(null);
  const { keys, byKey, change } = useSingleKeys(personKey);
  const [keysShown, setKeysShown] = useState(false);
  const still = useReducedMotion();
  const isOpposite = useBench((state) => state.looks.opposite);
  const widthInEm = useMemo(() => setWidthOf(pack), [pack]);
  const trueEm = useCallback(
    (_: CssPx, state: BenchState) => sizeInPx(size, pxPerMmNow(state.screen, window.devicePixelRatio)),
    [size],
  );
  const em = useCallback(
    (width: CssPx, { zoom }: BenchState) => workingEm(widthInEm, sizeInPx(size), width, zoom),
    [widthInEm, size],
  );
  usePlaying(
    steps,
    STEP_MS,
    useCallback(() => session.store.set({ playing: false }), [session]),
  );

  useEffect(() => {
    if (!sheet.current) return;
    return attachReplayKeys(sheet.current, session, steps, {
      singleKeys: byKey,
      mayPlay: !still,
      showKeys: () => setKeysShown((shown) => !shown),
    });
  }, [session, steps, byKey, still]);

  return (
    <section
      className={`${bench.bench} ${styles.table}`}
      aria-label={`Demonstration on “${pack.text}”`}
      data-replay="on"
    >
      <div
        ref={sheet}
        tabIndex={0}
        role="group"
        aria-label={`“${pack.text}”, step by step: Enter for the next step, Shift and Enter for the one before`}
        className={`sheet sheet-${isOpposite ? opposite(ground) : ground} ${bench.sheet} ${styles.sheet}`}
      >
        <LineCanvas kind="true" em={trueEm} />
        <p className={bench.sheetLabel}>{withUnit(size.value, size.unit)}, as it is</p>
        <div className={`${bench.working} ${styles.working}`}>
          <LineCanvas kind="working" em={em} />
        </div>
        <Beside em={em} />
      </div>
      <div className={styles.aside}>
        <ReplayControls steps={steps} />
        <details className="more">
          <summary>All steps</summary>
          <ol className={styles.steps}>
            {steps.map((step, index) => (
              <li key={index}>
                <StepButton
                  at={index + 1}
                  go={() => {
                    session.store.set({ playing: false });
                    replayTo(session, steps, index + 1);
                  }}
                >
                  {stepWords(pack, step)}
                </StepButton>
                {step.reason && <span className={styles.listReason}>{step.reason}</span>}
              </li>
            ))}
          </ol>
        </details>
      </div>
      <div className={styles.below}>
        <Legend />
        <LooksPanel />
        <Compare />
        <p>
          <button
            type="button"
            className="button button-text button-small"
            aria-expanded={keysShown}
            onClick={() => setKeysShown(!keysShown)}
          >
            Keys
          </button>
        </p>
        {keysShown && <KeysPanel keys={keys} onChange={change} replay />}
      </div>
    </section>
  );
}

function Beside({ em }: { em: (width: CssPx, state: BenchState) => CssPx }) {
  const overlay = useBench((state) => state.overlay);
  const overlayMode = useBench((state) => state.overlayMode);
  if (overlay === null || overlayMode !== 'beside') return null;
  return (
    <div className={bench.beside}>
      <p className={bench.sheetLabel}>{overlay === 'built-in' ? 'Built-in' : 'The step before'}</p>
      <LineCanvas kind="beside" em={em} />
    </div>
  );
}

function StepButton({ at, go, children }: { at: number; go: () => void; children: React.ReactNode }) {
  const now = useBench((state) => state.replayed === at);
  return (
    <button type="button" className={styles.stepButton} aria-current={now ? 'step' : undefined} onClick={go}>
      {children}
    </button>
  );
}

/**
 * The keys of a replay: those that go from gap to gap on the bench go from step to step here. Enter, Home and End only
 * on the sheet itself, single keys anywhere but in fields. Returns a function that removes them.
 */
function attachReplayKeys(
  sheet: HTMLElement,
  session: BenchSession,
  steps: readonly DemonstrationStep[],
  around: { singleKeys: ReadonlyMap<string, SingleKeyAct>; mayPlay: boolean; showKeys(): void },
): () => void {
  const to = (at: number) => {
    session.store.set({ playing: false });
    replayTo(session, steps, at);
  };
  const at = () => session.store.get().replayed ?? 0;

  function perform(act: SingleKeyAct): void {
    const { zoom, playing, shown } = session.store.get();
    if (act === 'gap after') to(at() + 1);
    else if (act === 'gap before') to(at() - 1);
    else if (act === 'watch again') {
      if (!around.mayPlay) return;
      if (!playing && at() >= steps.length) to(0);
      session.store.set({ playing: !playing });
    } else if (act === 'larger') setZoom(session, zoom * 1.25);
    else if (act === 'smaller') setZoom(session, zoom / 1.25);
    else if (act === 'show keys') around.showKeys();
    else if (act === 'true size') return;
    else if (act === 'show built-in') session.store.set({ shown: shown === 'mine' ? 'built-in' : 'mine' });
    else session.toggleLook(act.slice('look '.length) as LookName);
  }

  const pressed = (event: KeyboardEvent) => {
    const target = event.target as HTMLElement;
    if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const ownKeys: Record<string, number> = { Enter: at() + (event.shiftKey ? -1 : 1), Home: 0, End: steps.length };
    const own = target === sheet ? ownKeys[event.key] : undefined;
    if (own !== undefined) {
      event.preventDefault();
      return to(own);
    }
    if (target.matches('input, textarea, select, [contenteditable]') || event.repeat || !session.store.get().singleKeys)
      return;
    const act = around.singleKeys.get(event.key.toLowerCase());
    if (!act) return;
    event.preventDefault();
    perform(act);
  };
  window.addEventListener('keydown', pressed);
  return () => window.removeEventListener('keydown', pressed);
}
