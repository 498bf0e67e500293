'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Page';
import { RadioGroup, Select } from '@/app/_ui/Select';
import type { ClassMap } from '@/shared/class/map';
import { type MapOrder, orderedRows } from '@/shared/class/map-order';
import { mapNumbers } from '@/shared/class/map-view';
import { counted } from '@/shared/text/number';
import { type Cell, type CellSize, cellSizes, mapInks } from './map-frame';
import { MapGrid } from './map-grid';
import { makeStamps } from './map-stamps';
import styles from './map.module.css';
import { UnderCell } from './under-cell';

type Props = { /** Address of the numbers. */ address: string };

/** The map of a class: fetches its numbers in one request and draws them. */
export function Map({ address }: Props) {
  const [state, setState] = useState<{ map: ClassMap } | { failed: string } | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    const leaving = new AbortController();
    performance.mark('map-asked');
    fetch(address, { signal: leaving.signal })
      .then(async (answer) => {
        if (!answer.ok)
          throw new Error(
            answer.status === 401
              ? 'You are signed out. Sign in, then return here.'
              : `The server answered ${answer.status}.`,
          );
        const map = (await answer.json()) as ClassMap;
        performance.mark('map-came');
        setState({ map });
      })
      .catch((error: Error) => {
        if (!leaving.signal.aborted) setState({ failed: error.message });
      });
    return () => leaving.abort();
  }, [address, tries]);

  if (state === null)
    return (
      <p className={styles.waiting} role="status">
        The map is being fetched…
      </p>
    );
  if ('failed' in state) {
    return (
      <Notice kind="warning">
        The map couldn’t be loaded: {state.failed}{' '}
        <Button
          kind="text"
          onClick={() => {
            setState(null);
            setTries(tries + 1);
          }}
        >
          Try again
        </Button>
      </Notice>
    );
  }
  return <MapView map={state.map} />;
}

/** The map with its controls: the order of the rows, the size of a cell; and, below, the line of the chosen cell. */
function MapView({ map }: { map: ClassMap }) {
  const numbers = useMemo(() => mapNumbers(map), [map]);
  const { columns } = numbers;
  const [order, setOrder] = useState<MapOrder>({ by: 'farthest' });
  const [size, setSize] = useState<CellSize>(columns.length <= 14 && map.students.length <= 40 ? 'numbers' : 'signs');
  const [chosen, setChosen] = useState<Cell>({ row: 0, column: 0 });
  const [under, setUnder] = useState<Cell | null>(null);
  const rows = useMemo(() => orderedRows(numbers, order), [numbers, order]);
  const shown = under ?? chosen;
  return (
    <div className={styles.map}>
      <div className={styles.controls}>
        <Select
          name="map-order"
          label="Order of the rows"
          value={orderText(order)}
          onChange={({ target }) => setOrder(orderOf(target.value))}
          choices={[
            { value: 'farthest', label: 'Farthest off first' },
            { value: 'nearest', label: 'Nearest first' },
            { value: 'alike', label: 'Similar spacings together' },
            ...(map.namesShown ? [{ value: 'name', label: 'By name' }] : []),
            ...columns.map(({ letters, line }, column) => ({
              value: `pair ${column}`,
              label: `${letters}, gap ${columns[column]!.pair + 1}`,
              group: map.lines.length > 1 ? `Widest first, in “${map.lines[line]!.text}”` : 'Widest first at a pair',
            })),
          ]}
        />
        <RadioGroup
          row
          name="map-size"
          label="A cell shows"
          value={size}
          onChange={(value) => setSize(value as CellSize)}
          choices={Object.keys(cellSizes).map((value) => ({ value, label: sizeWords[value as CellSize] }))}
        />
      </div>
      <MapLegend map={map} />
      <p className="quiet note-size">
        {counted(map.students.length, 'student')} × {counted(columns.length, 'pair')}.{' '}
        <span className={styles.hands}>
          Arrow keys walk from cell to cell, Home and End along a row, Page Up and Down by ten; Enter opens the line at
          the desk.
        </span>
        <span className="on-paper">Printed as far as it was in view; as a table it prints whole.</span>
      </p>
      <MapGrid
        map={map}
        numbers={numbers}
        rows={rows}
        size={size}
        chosen={chosen}
        onChoose={setChosen}
        onUnder={setUnder}
      />
      <UnderCell
        map={map}
        columns={columns}
        student={rows[shown.row]!}
        column={shown.column}
        onSort={(column) => setOrder({ by: 'pair', column })}
      />
    </div>
  );
}

const sizeWords: Record<CellSize, string> = {
  numbers: 'its number',
  signs: 'its sign',
  whole: 'the whole class at a glance',
};

const orderText = (order: MapOrder): string => (order.by === 'pair' ? `pair ${order.column}` : order.by);
const orderOf = (text: string): MapOrder =>
  text.startsWith('pair ') ? { by: 'pair', column: Number(text.slice(5)) } : { by: text as 'name' };

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

/** What the signs mean, drawn from the same stamps as the map, and which tolerances apply. */
function MapLegend({ map }: { map: ClassMap }) {
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
    ? 'from the nearest reference, overall tracking discounted'
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
