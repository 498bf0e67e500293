import { useEffect, useRef } from 'react';
import type { Ground } from '@/shared/schemas/spacing';
import { useBench, useSession } from '../context';
import { inksOf, opposite } from '../drawing/inks';
import { dots, hatch, rings } from '../drawing/textures';
import type { Look } from '../session/looks';
import styles from '../bench.module.css';

const textures = { hatch, dots, rings };
const entries: readonly { texture: keyof typeof textures; looks: readonly Look[]; says: string }[] = [
  { texture: 'hatch', looks: ['white', 'hidden'], says: 'between the letters' },
  { texture: 'dots', looks: ['counters'], says: 'inside a letter: closed, or open between two strokes' },
  { texture: 'rings', looks: ['counters'], says: 'inside a letter that is open to one side: part of the gap too, and counted there' },
];

/** What the textures on the sheet mean, while one is to be seen. */
export function Legend() {
  const { ground } = useSession().props;
  const looks = useBench((state) => state.looks);
  const shown = entries.filter((entry) => entry.looks.some((look) => looks[look]));
  if (shown.length === 0) return null;
  const seenOn = looks.opposite ? opposite(ground) : ground;
  return (
    <ul className={styles.legend} aria-label="White on the sheet">
      {shown.map(({ texture, says }) => <li key={texture}><Swatch texture={texture} ground={seenOn} /> {says}</li>)}
    </ul>
  );
}

const WIDTH = 36, HEIGHT = 20, PITCH = 7;

/** A patch of the very texture, on the sheet's own ground. */
function Swatch({ texture, ground }: { texture: keyof typeof textures; ground: Ground }) {
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    const context = canvas?.getContext('2d');
    if (!canvas || !context) return;
    const dpr = window.devicePixelRatio || 1;
    canvas.width = Math.round(WIDTH * dpr);
    canvas.height = Math.round(HEIGHT * dpr);
    const { warm, cool } = inksOf(ground);
    context.fillStyle = textures[texture](context, texture === 'hatch' ? warm : cool, dpr, PITCH);
    context.fillRect(0, 0, canvas.width, canvas.height);
  }, [texture, ground]);
  return <span className={`sheet-${ground} ${styles.swatch}`} aria-hidden="true"><canvas ref={canvasRef} /></span>;
}
