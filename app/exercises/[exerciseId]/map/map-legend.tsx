'use client';
import { useEffect, useRef } from 'react';
import type { ClassMap } from '@/shared/class/map';
import { cellSizes } from './map-frame';
import { mapInks } from './map-inks';
import { makeStamps } from './map-stamps';
import styles from './map.module.css';

const entries: [look: number, words: string][] = [
  [-3, 'more than three times the tolerance tighter'],
  [-2, 'up to three times'],
  [-1, 'up to twice'],
  [0, 'within tolerance'],
  [1, 'wider, up to twice the tolerance'],
  [2, 'up to three times'],
  [3, 'more than three times'],
  [9, 'not set, or nothing to hold it against'],
];

const { width, height } = cellSizes.signs;

/** What the signs mean, drawn by the same stamps as the map, and which tolerances hold. */
export function MapLegend({ map }: { map: ClassMap }) {
  const listRef = useRef<HTMLUListElement>(null);
  useEffect(() => {
    const list = listRef.current!;
    const draw = () => {
      const stamps = makeStamps('signs', mapInks(list), 2);
      list.querySelectorAll('canvas').forEach((canvas, index) => {
        const context = canvas.getContext('2d')!;
        context.setTransform(2, 0, 0, 2, 0, 0);
        stamps.put(context, entries[index]![0], 0, 0);
      });
    };
    draw();
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    scheme.addEventListener('change', draw);
    return () => scheme.removeEventListener('change', draw);
  }, []);
  const tolerances = map.lines.flatMap((line) =>
    line.tolerances.length > 0 ? line.tolerances.flat() : [line.ownTolerance],
  );
  const [least, most] = [Math.min(...tolerances), Math.max(...tolerances)].map(Math.round);
  const against = map.lines.every(({ tolerances: lists }) => lists.length > 0)
    ? 'from the nearest reference, after the tightness of the whole line is taken out'
    : 'from the line’s own middle where there is no reference, else from the nearest reference';
  return (
    <div className={styles.legend}>
      <ul ref={listRef}>
        {entries.map(([look, words]) => (
          <li key={look}>
            <canvas width={2 * width} height={2 * height} className={styles.stamp} aria-hidden="true" /> {words}
          </li>
        ))}
      </ul>
      <p>
        A cell tells the deviation {against}, in 1/1000 em. Tolerance:{' '}
        {least === most ? least : `${least} to ${most}, pair by pair`}.
      </p>
    </div>
  );
}
