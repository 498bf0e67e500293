'use client';
import { useMemo, useState } from 'react';
import { RadioGroup } from '@/app/_ui/RadioGroup';
import { Select } from '@/app/_ui/Select';
import type { ClassMap } from '@/shared/class/map';
import { orderedRows, type MapOrder } from '@/shared/class/map-order';
import { mapNumbers } from '@/shared/class/map-view';
import { counted } from '@/shared/text/number';
import { MapGrid } from './map-grid';
import { MapLegend } from './map-legend';
import { UnderCell } from './under-cell';
import { cellSizes, type Cell, type CellSize } from './map-frame';
import styles from './map.module.css';

/** The map with what rules it: the order of the rows, the size of a cell; and, below, the line under the cell. */
export function MapView({ map }: { map: ClassMap }) {
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
            { value: 'alike', label: 'Like beside like' },
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
