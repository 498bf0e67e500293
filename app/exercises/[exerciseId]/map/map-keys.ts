'use client';
import type { Cell } from './map-frame';

type Key = { key: string; ctrlKey: boolean; metaKey: boolean; altKey: boolean };

/** Where a key leads from a cell, by the grid pattern of the ARIA Authoring Practices; null for a key that is not the grid’s. */
export function nextCell(
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
