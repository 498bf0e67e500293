'use client';
import { type ReactNode, useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { BenchContext, useBench, useSession } from './context';
import { opposite } from '../_line/inks';
import { attachKeyboard } from './input/keyboard';
import { AboutGap, ChosenGap } from './panels/chosen-gap';
import { KeysPanel } from './panels/keys-panel';
import { Ladder } from './panels/ladder';
import { LinePanel, PrintProof } from './panels/line-panel';
import { Legend, LooksPanel } from './panels/looks-panel';
import { ReferencePanel, StartOffer } from './panels/reference-panel';
import { RecordPanel } from './recording/record-panel';
import { SaveState } from './panels/save-state';
import { ScreenPanel, ZoomNote } from './panels/screen-panel';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import type { BenchProps } from './props';
import { toggleWatching } from './replay/replay';
import { openSession, type BenchSession } from './session/session';
import { useSingleKeys } from './input/keys';
import { WorkingView } from './working-view';
import styles from './bench.module.css';

type Props = BenchProps & {
  onSession?: (session: BenchSession) => void;
  /** What is in the margin, in place of the smaller sizes. */
  margin?: ReactNode;
};

/** The bench itself. Browser only: it needs canvas, storage and a person. */
export function Workbench(props: Props) {
  // One session per draft; the page passes new props only for another draft (see bench.tsx).
  const [session] = useState(() => openSession(props));
  const { onSession } = props;
  useEffect(() => session.start(), [session]);
  useEffect(() => onSession?.(session), [session, onSession]);
  return (
    <BenchContext value={session}>
      <Table margin={props.margin} />
    </BenchContext>
  );
}

function Table({ margin }: { margin: ReactNode }) {
  const session = useSession();
  const { pack, size, ground, mode, tells, personKey, demonstrations, place, onward } = session.props;
  const rootRef = useRef<HTMLElement>(null);
  const sheetRef = useRef<HTMLDivElement>(null);
  const fieldRef = useRef<HTMLInputElement>(null);
  const { keys, byKey, change } = useSingleKeys(personKey);
  const [keysShown, setKeysShown] = useState(false);
  const [screenShown, setScreenShown] = useState(false);
  // On a phone what is not needed for each change comes up from below.
  const [raised, setRaised] = useState<'looks' | 'sizes' | null>(null);
  const isOpposite = useBench((state) => state.looks.opposite);
  const chosen = useBench((state) => state.chosen.head);
  const sheet = `sheet sheet-${isOpposite ? opposite(ground) : ground}`;
  const focusGap = useCallback(
    (pair: number) =>
      rootRef.current?.querySelector<HTMLElement>(`[data-gap="${pair}"]`)?.focus({ preventScroll: true }),
    [],
  );
  useRoom(sheetRef, session);

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

  const raise = (which: 'looks' | 'sizes') => () => setRaised((now) => (now === which ? null : which));
  return (
    <section ref={rootRef} className={styles.bench} aria-label={`Bench: “${pack.text}”`} data-mode={mode}>
      <div className={styles.bar}>
        {place}
        <SaveState />
        {onward}
      </div>
      <div className={styles.notices}>
        <StartOffer />
        <ZoomNote />
      </div>
      <div className={styles.main}>
        <WorkingView sheet={sheet} sheetRef={sheetRef} ruler={tellsAtLeast(tells, 'evenness')} />
        <Legend
          otherwise={
            <p className={styles.dragHint}>
              Point at a gap and drag it, or use the arrow keys. Everything to the right moves along.
            </p>
          }
        />
      </div>
      <div className={styles.dock}>
        <ChosenGap fieldRef={fieldRef} backToGap={() => focusGap(chosen)}>
          <div className={styles.raisers}>
            {raised === 'looks' && <LooksPanel />}
            {raised === 'sizes' && <Ladder sheet={sheet} />}
            <button
              type="button"
              className="button button-small"
              aria-expanded={raised === 'looks'}
              onClick={raise('looks')}
            >
              Ways of looking
            </button>
            {!margin && (
              <button
                type="button"
                className="button button-small"
                aria-expanded={raised === 'sizes'}
                onClick={raise('sizes')}
              >
                Smaller sizes
              </button>
            )}
          </div>
        </ChosenGap>
        <AboutGap />
        <LinePanel />
        <div className={styles.lastRow}>
          <LooksPanel />
          <p className={styles.foot}>
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
      </div>
      <div className={styles.margin}>
        {margin ?? <Ladder sheet={sheet} />}
        {mode === 'reference' && <ReferencePanel />}
        {demonstrations && <RecordPanel demonstrations={demonstrations} />}
      </div>
      {screenShown && (
        <Over close={() => setScreenShown(false)}>
          <ScreenPanel />
        </Over>
      )}
      {keysShown && (
        <Over close={() => setKeysShown(false)}>
          <KeysPanel keys={keys} onChange={change} />
        </Over>
      )}
      <PrintProof />
    </section>
  );
}

/** What lies over the sheet while it is asked for. */
function Over({ close, children }: { close: () => void; children: ReactNode }) {
  return (
    <div className={styles.over}>
      {children}
      <button type="button" className="button button-small" onClick={close}>
        Close
      </button>
    </div>
  );
}

/** As in bench.module.css: from here up the bench is one screen, and what is on the sheet fits its height. */
const ONE_SCREEN = '(min-width: 64rem) and (min-height: 40rem)';

/** Tells the state how much room the sheet has for its lines, before anything is drawn and whenever it changes. */
function useRoom(sheetRef: React.RefObject<HTMLDivElement | null>, session: BenchSession): void {
  useLayoutEffect(() => {
    const sheet = sheetRef.current;
    if (!sheet) return;
    const oneScreen = window.matchMedia(ONE_SCREEN);
    const take = (width: number, height: number) => {
      const room = { width: Math.floor(width), height: oneScreen.matches ? Math.floor(height) : null };
      const before = session.store.get().room;
      if (before?.width !== room.width || before.height !== room.height) session.store.set({ room });
    };
    const style = getComputedStyle(sheet);
    take(
      sheet.clientWidth,
      sheet.clientHeight - Number.parseFloat(style.paddingTop) - Number.parseFloat(style.paddingBottom),
    );
    const observer = new ResizeObserver(([entry]) => entry && take(entry.contentRect.width, entry.contentRect.height));
    observer.observe(sheet);
    return () => observer.disconnect();
  }, [sheetRef, session]);
}

/** Goes to the number field with the first character already typed, through React's own way of noticing it. */
function startTyping(field: HTMLInputElement | null, first: string): void {
  if (!field) return;
  field.focus();
  if (first === '') return;
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, first);
  field.dispatchEvent(new Event('input', { bubbles: true }));
}
