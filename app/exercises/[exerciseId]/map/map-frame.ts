'use client';

/** The sizes of a cell: with its number, with its sign, or small enough to show the whole class. CSS px. */
export const cellSizes = {
  numbers: { width: 52, height: 28 },
  signs: { width: 28, height: 22 },
  whole: { width: 9, height: 6 },
} as const;
export type CellSize = keyof typeof cellSizes;

/** Everything that determines positions on the map, in CSS px; rows and columns are counted from 0. */
export type MapFrame = {
  cell: CellSize;
  columns: number;
  rows: number;
  names: number;
  head: number;
  width: number;
  height: number;
  left: number;
  top: number;
};

/** The column heads, and under them the class summed up in one row. */
export const heads = { letters: 26, class: 26 };
export const headHeight = heads.letters + heads.class;

export const fullWidth = ({ cell, columns, names }: Pick<MapFrame, 'cell' | 'columns' | 'names'>): number =>
  names + columns * cellSizes[cell].width + 2;
export const fullHeight = ({ cell, rows, head }: Pick<MapFrame, 'cell' | 'rows' | 'head'>): number =>
  head + rows * cellSizes[cell].height + 2;

/** The visible part, as half-open ranges. */
export function seen({ cell, columns, rows, names, head, width, height, left, top }: MapFrame) {
  const { width: w, height: h } = cellSizes[cell];
  const clamp = (value: number, most: number) => Math.max(0, Math.min(most, value));
  return {
    columns: [clamp(Math.floor(left / w), columns), clamp(Math.ceil((left + width - names) / w), columns)] as const,
    rows: [clamp(Math.floor(top / h), rows), clamp(Math.ceil((top + height - head) / h), rows)] as const,
  };
}

export const xOf = (frame: MapFrame, column: number): number =>
  frame.names + column * cellSizes[frame.cell].width - frame.left;
export const yOf = (frame: MapFrame, row: number): number =>
  frame.head + row * cellSizes[frame.cell].height - frame.top;

export type Cell = { row: number; column: number };

/** The cell under a point of the view, or null over names, heads and empty space. */
export function cellAt(frame: MapFrame, x: number, y: number): Cell | null {
  if (x < frame.names || y < frame.head) return null;
  const { width, height } = cellSizes[frame.cell];
  const cell = {
    row: Math.floor((y - frame.head + frame.top) / height),
    column: Math.floor((x - frame.names + frame.left) / width),
  };
  return cell.row < frame.rows && cell.column < frame.columns ? cell : null;
}

/** The scroll position at which a cell is fully visible; unchanged when it already is. */
export function scrollFor(frame: MapFrame, { row, column }: Cell): { left: number; top: number } {
  const { width, height } = cellSizes[frame.cell];
  const into = (at: number, size: number, from: number, room: number) => Math.min(at, Math.max(from, at + size - room));
  return {
    left: into(column * width, width, frame.left, frame.width - frame.names),
    top: into(row * height, height, frame.top, frame.height - frame.head),
  };
}

/**
 * Colours of the map as the page has them now, light or dark: read from a probe for each role, since a canvas can't use
 * custom properties.
 */
export type MapInks = {
  ground: string;
  raised: string;
  ink: string;
  quiet: string;
  rule: string;
  edge: string;
  accent: string;
  wide: string;
  tight: string;
  /** Font of the letters, as a font-family list. */ family: string;
};

const roles: Record<Exclude<keyof MapInks, 'family'>, string> = {
  ground: '--ground',
  raised: '--raised',
  ink: '--ink',
  quiet: '--quiet-ink',
  rule: '--rule',
  edge: '--edge',
  accent: '--accent',
  wide: '--warm-white',
  tight: '--cool-white',
};

export function mapInks(beside: Element): MapInks {
  const probes = Object.entries(roles).map(([role, token]) => {
    const probe = document.createElement('span');
    probe.hidden = true;
    probe.style.color = `var(${token})`;
    return { role, probe };
  });
  // All are added before the first is read, so that the page's styles are computed once.
  beside.append(...probes.map(({ probe }) => probe));
  const inks = Object.fromEntries(probes.map(({ role, probe }) => [role, getComputedStyle(probe).color])) as Record<
    keyof typeof roles,
    string
  >;
  probes.forEach(({ probe }) => probe.remove());
  return { ...inks, family: getComputedStyle(beside).fontFamily };
}
