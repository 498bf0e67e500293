'use client';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { withUnit } from '@/shared/text/number';
import { BenchContext, useBench, useSession } from './context';
import { opposite } from '../_line/inks';
import { LineCanvas } from './drawing/line-canvas';
import { sizeInPx } from './drawing/sizes';
import { attachKeyboard } from './input/keyboard';
import { ChosenGap } from './panels/chosen-gap';
import { KeysPanel } from './panels/keys-panel';
import { Ladder, planLadder } from './panels/ladder';
import { LinePanel, PrintProof } from './panels/line-panel';
import { LooksPanel } from './panels/looks-panel';
import { ReferencePanel, StartOffer } from './panels/reference-panel';
import { RecordPanel } from './recording/record-panel';
import { SaveState } from './panels/save-state';
import { ScreenPanel, ZoomNote } from './panels/screen-panel';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import type { BenchProps } from './props';
import { pxPerMmNow } from './session/screen';
import { toggleWatching } from './replay/replay';
import { openSession, type BenchSession } from './session/session';
import type { BenchState } from './session/state';
import { useSingleKeys } from './input/keys';
import { WorkingView } from './working-view';
import styles from './bench.module.css';

type Props = BenchProps & { onSession?: (session: BenchSession) => void };

/** The bench itself. Browser only: it needs canvas, storage and a person. */
export function Workbench(props: Props) {
  // One session per draft; the page passes new props only for another draft (see bench.tsx).
  const [session] = useState(() => openSession(props));
  const { onSession } = props;
  useEffect(() => session.start(), [session]);
  useEffect(() => onSession?.(session), [session, onSession]);
  return (
    <BenchContext value={session}>
      <Table />
    </BenchContext>
  );
}

function Table() {
  const session = useSession();
  const { pack, size, ground, mode, tells, personKey, demonstrations } = session.props;
  const rootRef = useRef<HTMLElement>(null);
  const fieldRef = useRef<HTMLInputElement>(null);
  const { keys, byKey, change } = useSingleKeys(personKey);
  const [keysShown, setKeysShown] = useState(false);
  const [screenShown, setScreenShown] = useState(false);
  const isOpposite = useBench((state) => state.looks.opposite);
  const chosen = useBench((state) => state.chosen.head);
  const ladder = useMemo(() => planLadder(session.props), [session]);
  const trueEm = useCallback(
    (_: number, state: BenchState) => sizeInPx(size, pxPerMmNow(state.screen, window.devicePixelRatio)),
    [size],
  );
  const sheet = `sheet sheet-${isOpposite ? opposite(ground) : ground}`;
  const focusGap = useCallback(
    (pair: number) =>
      rootRef.current?.querySelector<HTMLElement>(`[data-gap="${pair}"]`)?.focus({ preventScroll: true }),
    [],
  );

  useEffect(() => {
    const root = rootRef.current;
    if (!root) return;
    return attachKeyboard(root, session, {
      focusGap,
      typeNumber: (first) => startTyping(fieldRef.current, first),
      showKeys: () => setKeysShown((shown) => !shown),
      watchAgain: () => toggleWatching(session),
      singleKeys: () => byKey,
    });
  }, [session, focusGap, byKey]);

  const onSheet = useMemo(
    () =>
      function Sheet(working: React.ReactNode) {
        return (
          <div className={`${sheet} ${styles.sheet}`}>
            <LineCanvas kind="true" em={trueEm} />
            <p className={styles.sheetLabel}>{withUnit(size.value, size.unit)}, as it will be</p>
            {working}
          </div>
        );
      },
    [sheet, size, trueEm],
  );
  return (
    <section
      ref={rootRef}
      className={styles.bench}
      aria-label={`Bench: “${pack.text}”`}
      data-mode={mode}
      data-ladder={ladder.sizes.length === 0 ? 'none' : ladder.place}
    >
      <StartOffer />
      <div className={styles.main}>
        <WorkingView onSheet={onSheet} ruler={tellsAtLeast(tells, 'evenness')} />
        <p className={styles.dragHint}>
          Point at a gap and drag it, or use the arrow keys. Everything to the right moves along.
        </p>
      </div>
      <Ladder sheet={sheet} plan={ladder} />
      <div className={styles.panels}>
        <ChosenGap fieldRef={fieldRef} backToGap={() => focusGap(chosen)} />
        <LinePanel />
        {mode === 'reference' && <ReferencePanel />}
        {demonstrations && <RecordPanel demonstrations={demonstrations} />}
        <LooksPanel />
      </div>
      <div className={styles.foot}>
        <SaveState />
        <ZoomNote />
        <p className={styles.row}>
          <button type="button" className="button button-text button-small" onClick={() => window.print()}>
            Print at true size
          </button>
          {size.unit === 'pt' && (
            <button
              type="button"
              className="button button-text button-small"
              aria-expanded={screenShown}
              onClick={() => setScreenShown(!screenShown)}
            >
              True size on screen
            </button>
          )}
          <button
            type="button"
            className="button button-text button-small"
            aria-expanded={keysShown}
            onClick={() => setKeysShown(!keysShown)}
          >
            Keys
          </button>
        </p>
      </div>
      {screenShown && <ScreenPanel />}
      {keysShown && <KeysPanel keys={keys} onChange={change} />}
      <PrintProof />
    </section>
  );
}

/** Moves to the number field with the first character already typed, in a way that React notices. */
function startTyping(field: HTMLInputElement | null, first: string): void {
  if (!field) return;
  field.focus();
  if (first === '') return;
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, first);
  field.dispatchEvent(new Event('input', { bubbles: true }));
}
