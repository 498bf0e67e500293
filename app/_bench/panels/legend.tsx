import { useEffect, useRef } from 'react';
import type { Ground } from '@/shared/schemas/spacing';
import { useBench, useSession } from '../context';
import { inksOf, opposite, type Inks } from '@/app/_line/inks';
import { dots, hatch, rings } from '@/app/_line/textures';
import type { Look } from '@/app/_line/looks';
import styles from '../bench.module.css';

type Paint = (context: CanvasRenderingContext2D, inks: Inks, dpr: number) => void;

const textured =
  (texture: typeof hatch, ink: 'warm' | 'cool'): Paint =>
  (context, inks, dpr) => {
    context.fillStyle = texture(context, inks[ink], dpr, PITCH);
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

const entries: readonly { looks: readonly Look[]; says: string; paint: Paint }[] = [
  { looks: ['white', 'hidden'], says: 'between the letters', paint: textured(hatch, 'warm') },
  { looks: ['counters'], says: 'inside a letter: closed, or open between two strokes', paint: textured(dots, 'cool') },
  {
    looks: ['counters'],
    says: 'inside a letter that is open to one side: part of the gap too, and counted there',
    paint: textured(rings, 'cool'),
  },
  { looks: ['why'], says: 'the edges as the measure sees them', paint: ruled('note', 2) },
  { looks: ['why'], says: 'as they are drawn, where that differs', paint: ruled('cool', 1) },
  { looks: ['why'], says: 'the distances it weighs', paint: ruled('warm', 1) },
];

/** What textures and lines on the sheet mean, while one is to be seen. */
export function Legend() {
  const { ground } = useSession().props;
  const looks = useBench((state) => state.looks);
  const shown = entries.filter((entry) => entry.looks.some((look) => looks[look]));
  if (shown.length === 0) return null;
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
  HEIGHT = 20,
  PITCH = 7;

/** A patch of the very texture or line, on the sheet's own ground. */
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
