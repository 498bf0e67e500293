'use client';

import { useRouter } from 'next/navigation';
import { type KeyboardEvent, type PointerEvent, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { ClassMap } from '@/shared/class/map';
import { type MapNumbers, mapWords, valueAt } from '@/shared/class/map-view';
import { mapCanvas, type MapCanvas } from './map-canvas';
import { type Cell, cellAt, type CellSize, cellSizes, fullHeight, fullWidth, headHeight, scrollFor } from './map-frame';
import styles from './map.module.css';

/** Room for a scroll bar below, in CSS px, so that a small map needs none at its side. */
const scrollBar = 18;

type Props = {
  map: ClassMap;
  numbers: MapNumbers;
  rows: readonly number[];
  size: CellSize;
  chosen: Cell;
  onChoose: (cell: Cell) => void;
  onUnder: (cell: Cell | null) => void;
};

/**
 * The grid: a canvas that paints the visible part, and on top one real element, the chosen cell, which has the focus
 * and is read aloud. So the map is one Tab stop, whatever its size.
 */
export function MapGrid({ map, numbers, rows, size, chosen, onChoose, onUnder }: Props) {
  const scrollerRef = useRef<HTMLDivElement>(null);
  const canvasRef = useRef<HTMLCanvasElement>(null);
  const cellRef = useRef<HTMLDivElement>(null);
  const drawnRef = useRef<MapCanvas | null>(null);
  const byHand = useRef(false);
  const router = useRouter();
  const { columns } = numbers;
  const [names, setNames] = useState(0);

  useEffect(() => {
    const drawn = mapCanvas(scrollerRef.current!, canvasRef.current!, map, numbers, setNames);
    drawnRef.current = drawn;
    return drawn.stop;
  }, [map, numbers]);
  useEffect(() => {
    drawnRef.current?.show({ rows, size, chosen });
  }, [map, numbers, rows, size, chosen]);

  // The cell is a new element each time, so that it is read aloud; the focus moves with it.
  useLayoutEffect(() => {
    if (!byHand.current) return;
    byHand.current = false;
    const scroller = scrollerRef.current!,
      frame = drawnRef.current!.frame();
    const to = scrollFor(frame, chosen);
    scroller.scrollTo(to.left, to.top);
    cellRef.current?.focus({ preventScroll: true });
  }, [chosen]);

  const choose = (cell: Cell) => {
    byHand.current = true;
    onChoose(cell);
  };
  const student = rows[chosen.row]!,
    here = columns[chosen.column]!,
    line = map.lines[here.line]!;
  const { name, token } = map.students[student]!;

  function onKeyDown(event: KeyboardEvent) {
    if (event.key === 'Enter' && token && line.rows[student])
      return router.push(`/critique/${token}/${line.specimenId}`);
    const next = nextCell(event, chosen, { rows: rows.length, columns: columns.length });
    if (!next) return;
    event.preventDefault();
    onUnder(null);
    choose(next);
  }
  function cellUnder(event: PointerEvent): Cell | null {
    const box = scrollerRef.current!.getBoundingClientRect();
    return cellAt(drawnRef.current!.frame(), event.clientX - box.left, event.clientY - box.top);
  }
  function onPointerMove(event: PointerEvent) {
    const cell = event.pointerType === 'touch' ? null : cellUnder(event);
    if (drawnRef.current!.point(cell)) onUnder(cell);
  }
  function onPointerLeave() {
    if (drawnRef.current!.point(null)) onUnder(null);
  }

  const { width, height } = cellSizes[size];
  const full = {
    width: fullWidth({ cell: size, columns: columns.length, names }),
    height: fullHeight({ cell: size, rows: rows.length, head: headHeight }),
  };
  const place = { left: names + chosen.column * width, top: headHeight + chosen.row * height, width, height };
  return (
    <div
      ref={scrollerRef}
      className={styles.scroller}
      style={{ height: full.height + scrollBar }}
      role="grid"
      aria-label="Pairs across, students down"
      aria-rowcount={rows.length + 1}
      aria-colcount={columns.length + 1}
      data-map="drawn"
      onKeyDown={onKeyDown}
      onPointerMove={onPointerMove}
      onPointerLeave={onPointerLeave}
      onClick={(event) => {
        const cell = cellUnder(event as unknown as PointerEvent);
        if (cell) {
          onUnder(null);
          choose(cell);
        }
      }}
    >
      <canvas ref={canvasRef} className={styles.canvas} aria-hidden="true" />
      <div className={styles.spacer} aria-hidden="true" style={full} />
      <div role="row" aria-rowindex={1}>
        <span role="columnheader" aria-colindex={chosen.column + 2} className="visually-hidden">
          {here.letters}
        </span>
      </div>
      <div role="row" aria-rowindex={chosen.row + 2}>
        <span role="rowheader" aria-colindex={1} className="visually-hidden">
          {name}
        </span>
        <div
          key={`${student} ${chosen.column}`}
          ref={cellRef}
          role="gridcell"
          tabIndex={0}
          aria-colindex={chosen.column + 2}
          className={styles.cell}
          style={place}
        >
          <span className="visually-hidden">
            {name}, {here.letters}:{' '}
            {mapWords(valueAt(map, student, here), line.rows[student]?.against === null ? 'line' : 'reference')}
          </span>
        </div>
      </div>
    </div>
  );
}

type Key = { key: string; ctrlKey: boolean; metaKey: boolean; altKey: boolean };

/**
 * Where a key leads from a cell, by the grid pattern of the ARIA Authoring Practices; null for a key that the grid
 * doesn't use.
 */
function nextCell(
  { key, ctrlKey, metaKey, altKey }: Key,
  { row, column }: Cell,
  { rows, columns }: { rows: number; columns: number },
): Cell | null {
  if (altKey || metaKey) return null;
  const to = (nextRow: number, nextColumn: number): Cell => ({
    row: Math.max(0, Math.min(rows - 1, nextRow)),
    column: Math.max(0, Math.min(columns - 1, nextColumn)),
  });
  switch (key) {
    case 'ArrowLeft':
      return to(row, column - 1);
    case 'ArrowRight':
      return to(row, column + 1);
    case 'ArrowUp':
      return to(row - 1, column);
    case 'ArrowDown':
      return to(row + 1, column);
    case 'PageUp':
      return to(row - 10, column);
    case 'PageDown':
      return to(row + 10, column);
    case 'Home':
      return to(ctrlKey ? 0 : row, 0);
    case 'End':
      return to(ctrlKey ? rows - 1 : row, columns - 1);
    default:
      return null;
  }
}
