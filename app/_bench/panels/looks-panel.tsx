import { type ReactNode, useEffect, useId, useRef } from 'react';
import type { Ground } from '@/shared/schemas/spacing';
import styles from '../bench.module.css';
import { useBench, useSession } from '../context';
import { type Inks, inksOf, opposite } from '@/app/_line/inks';
import { patternOf } from '@/app/_line/brush';
import type { LookName } from '@/shared/line/looks';
import type { Texture } from '@/shared/line/shapes';
import { setZoom } from '../input/pointer';
import { tellsAtLeast } from '@/shared/exercise/what-the-bench-tells';
import { lookTable, looksOn } from '@/app/_line/looks';
import type { OverlayMode } from '../session/state';

/** Ways of looking as words to switch on and off; they can be combined. */
export function LooksPanel() {
  const session = useSession();
  const { tells } = session.props;
  const looks = useBench((state) => state.looks);
  const zoom = useBench((state) => state.zoom);
  const offered = looksOn('bench').filter((look) => look !== 'why' || tellsAtLeast(tells, 'evenness'));
  return (
    <section className={`${styles.panel} ${styles.looking}`} aria-label="Ways of looking">
      <div className={styles.looks} role="group" aria-label="Look at it">
        {offered.map((look) => (
          <button
            key={look}
            type="button"
            className={styles.lookButton}
            aria-pressed={looks[look]}
            title={lookTable[look].says}
            onClick={() => session.toggleLook(look)}
          >
            {lookTable[look].name}
          </button>
        ))}
      </div>
      <span className={styles.zoom} role="group" aria-label="Working view">
        <button type="button" className={styles.lookButton} onClick={() => setZoom(session, zoom / 1.25)}>
          Smaller
        </button>
        <button type="button" className={styles.lookButton} onClick={() => setZoom(session, zoom * 1.25)}>
          Larger
        </button>
      </span>
    </section>
  );
}

/** Another spacing of the same words beside or under this one. */
export function Compare() {
  const session = useSession();
  const { draftId, overlays = [], start } = session.props;
  const overlay = useBench((state) => state.overlay);
  const overlayMode = useBench((state) => state.overlayMode);
  const id = useId();
  useTurns(overlay !== null && overlayMode === 'in turn');
  return (
    <div className={styles.row}>
      <span className={styles.inlineField}>
        <label htmlFor={`${id}-compare`}>Compare with</label>
        <select
          id={`${id}-compare`}
          value={overlay ?? ''}
          onChange={(event) => session.store.set({ overlay: event.currentTarget.value || null, otherTurn: false })}
        >
          <option value="">nothing</option>
          <option value="built-in">Built-in</option>
          {start && <option value="start">{start.label}</option>}
          {draftId === 'demonstration' && <option value="step before">The step before</option>}
          {overlays.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label}
            </option>
          ))}
        </select>
      </span>
      {overlay !== null && (
        <span className={styles.inlineField}>
          <label htmlFor={`${id}-overlay-mode`}>How</label>
          <select
            id={`${id}-overlay-mode`}
            value={overlayMode}
            onChange={(event) =>
              session.store.set({ overlayMode: event.currentTarget.value as OverlayMode, otherTurn: false })
            }
          >
            <option value="under">as outlines under it</option>
            <option value="beside">beside it</option>
            <option value="in turn">in slow turns</option>
          </select>
        </span>
      )}
    </div>
  );
}

/** Slow: each spacing is shown for a second and a half. Choosing it is consent to motion; nothing moves otherwise. */
const TURN_MS = 1500;

function useTurns(turning: boolean): void {
  const { store } = useSession();
  useEffect(() => {
    if (!turning) return;
    const timer = setInterval(() => store.set({ otherTurn: !store.get().otherTurn }), TURN_MS);
    return () => {
      clearInterval(timer);
      store.set({ otherTurn: false });
    };
  }, [store, turning]);
}

type Paint = (context: CanvasRenderingContext2D, inks: Inks, dpr: number) => void;

const textured =
  (texture: Texture, ink: 'warm' | 'cool'): Paint =>
  (context, inks, dpr) => {
    context.fillStyle = patternOf({ context, dpr, em: EM }, texture, inks[ink]);
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
  };

const ruled =
  (ink: 'note' | 'cool' | 'warm', thick: number): Paint =>
  (context, inks, dpr) => {
    const height = Math.round(thick * dpr);
    context.fillStyle = inks[ink];
    context.fillRect(
      Math.round(5 * dpr),
      Math.round((context.canvas.height - height) / 2),
      context.canvas.width - 2 * Math.round(5 * dpr),
      height,
    );
  };

const entries: readonly { looks: readonly LookName[]; says: string; paint: Paint }[] = [
  { looks: ['white', 'hidden'], says: 'between the letters', paint: textured('hatch', 'warm') },
  {
    looks: ['counters'],
    says: 'inside a letter: closed, or between two strokes',
    paint: textured('dots', 'cool'),
  },
  {
    looks: ['counters'],
    says: 'inside, open to one side: counted in the gap as well',
    paint: textured('rings', 'cool'),
  },
  { looks: ['why'], says: 'the edges as the measure sees them', paint: ruled('note', 2) },
  { looks: ['why'], says: 'as they are drawn, where that differs', paint: ruled('cool', 1) },
  { looks: ['why'], says: 'the distances it weighs', paint: ruled('warm', 1) },
];

/** What textures and lines on the sheet mean, while one is to be seen; else `otherwise`. */
export function Legend({ otherwise = null }: { otherwise?: ReactNode }) {
  const { ground } = useSession().props;
  const looks = useBench((state) => state.looks);
  const shown = entries.filter((entry) => entry.looks.some((look) => looks[look]));
  if (shown.length === 0) return otherwise;
  const seenOn = looks.opposite ? opposite(ground) : ground;
  return (
    <ul className={styles.legend} aria-label="What is drawn on the sheet">
      {shown.map(({ says, paint }) => (
        <li key={says}>
          <Swatch paint={paint} ground={seenOn} /> {says}
        </li>
      ))}
    </ul>
  );
}

const WIDTH = 36,
  HEIGHT = 20;
/** Textures scaled as on a line of this em, CSS px. */
const EM = 120;

/** A patch of the same texture or line, on the sheet's own ground. */
function Swatch({ paint, ground }: { paint: Paint; ground: Ground }) {
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    const context = canvas?.getContext('2d');
    if (!canvas || !context) return;
    const dpr = window.devicePixelRatio || 1;
    canvas.width = Math.round(WIDTH * dpr);
    canvas.height = Math.round(HEIGHT * dpr);
    paint(context, inksOf(ground), dpr);
  }, [paint, ground]);
  return (
    <span className={`sheet-${ground} ${styles.swatch}`} aria-hidden="true">
      <canvas ref={canvasRef} />
    </span>
  );
}
