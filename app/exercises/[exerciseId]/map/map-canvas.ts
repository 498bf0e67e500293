'use client';
import type { ClassMap } from '@/shared/class/map';
import { classRow, shadeOf, noShade, type MapNumbers } from '@/shared/class/map-view';
import { type Cell, type CellSize, headHeight, type MapFrame, mapInks } from './map-frame';
import { mapBody, type MapPicture, paintMap } from './paint-map';
import { makeStamps } from './map-stamps';

type Shown = { rows: readonly number[]; size: CellSize; chosen: Cell };
export type MapCanvas = {
  show: (shown: Shown) => void;
  /** Sets the cell under the pointer; returns whether it changed. */
  point: (cell: Cell | null) => boolean;
  frame: () => MapFrame;
  stop: () => void;
};

/**
 * Keeps a canvas up to date: paints at most once a frame, after scrolling, resizing, pointing or new data. `onFit`
 * receives the width of the names.
 */
export function mapCanvas(
  scroller: HTMLElement,
  canvas: HTMLCanvasElement,
  map: ClassMap,
  numbers: MapNumbers,
  onFit: (namesWidth: number) => void,
): MapCanvas {
  const context = canvas.getContext('2d', { alpha: false })!;
  const picture = pictureOf(map, numbers);
  const frame: MapFrame = {
    cell: 'signs',
    columns: numbers.columns.length,
    rows: numbers.students,
    names: namesWidth(scroller.clientWidth),
    head: headHeight,
    width: scroller.clientWidth,
    height: scroller.clientHeight,
    left: 0,
    top: 0,
  };
  let inks = mapInks(scroller),
    dpr = 0,
    stamps = makeStamps('signs', inks, 1),
    asked = 0;
  let chosen: Cell | null = null,
    under: Cell | null = null;
  const body = mapBody();
  let first = true;

  const paint = () => {
    asked = 0;
    // On whole pixels of the screen, so that what is already painted can be moved.
    frame.left = Math.round(scroller.scrollLeft * dpr) / dpr;
    frame.top = Math.round(scroller.scrollTop * dpr) / dpr;
    paintMap({ context, frame, inks, stamps, dpr, picture, body, chosen, under });
    if (first) performance.mark('map-drawn');
    first = false;
  };
  const soon = () => {
    asked ||= requestAnimationFrame(paint);
  };
  const fit = () => {
    dpr = window.devicePixelRatio || 1;
    Object.assign(frame, {
      width: scroller.clientWidth,
      height: scroller.clientHeight,
      names: namesWidth(scroller.clientWidth),
    });
    canvas.width = Math.round(frame.width * dpr);
    canvas.height = Math.round(frame.height * dpr);
    canvas.style.width = `${frame.width}px`;
    canvas.style.height = `${frame.height}px`;
    stamps = makeStamps(frame.cell, inks, dpr);
    body.forget();
    onFit(frame.names);
    soon();
  };
  const recolour = () => {
    inks = mapInks(scroller);
    fit();
  };

  const resized = new ResizeObserver(fit);
  resized.observe(scroller);
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', recolour);
  scroller.addEventListener('scroll', soon, { passive: true });
  fit();

  return {
    show: ({ rows, size, chosen: cell }) => {
      if (picture.order !== rows) body.forget();
      picture.order = rows;
      chosen = cell;
      if (size !== frame.cell) {
        frame.cell = size;
        stamps = makeStamps(size, inks, dpr);
        body.forget();
      }
      soon();
    },
    point: (cell) => {
      if (cell?.row === under?.row && cell?.column === under?.column) return false;
      under = cell;
      soon();
      return true;
    },
    frame: () => ({ ...frame, left: scroller.scrollLeft, top: scroller.scrollTop }),
    stop: () => {
      cancelAnimationFrame(asked);
      resized.disconnect();
      scheme.removeEventListener('change', recolour);
      scroller.removeEventListener('scroll', soon);
    },
  };
}

/** Names get at most a third of a narrow screen, and only what they need on a wide one. */
const namesWidth = (width: number): number => Math.min(168, Math.round(width / 3));

function pictureOf(map: ClassMap, numbers: MapNumbers): MapPicture {
  const { columns, far, shades, students } = numbers;
  const classFar = classRow(numbers);
  return {
    shades,
    far,
    order: Array.from({ length: students }, (_, student) => student),
    names: map.students.map(({ name }) => name),
    letters: columns.map(({ letters }) => letters),
    begins: columns.map(({ first }) => first),
    classFar,
    classShades: Int8Array.from(columns, ({ line, pair }, index) => {
      const { tolerances, ownTolerance } = map.lines[line]!;
      const value = classFar[index] ?? null;
      return value === null ? noShade : shadeOf(value, tolerances[0]?.[pair] ?? ownTolerance);
    }),
  };
}
