'use client';
import { useEffect, useRef } from 'react';
import { lineArt } from '@/app/_bench/drawing/art';
import { inksOf } from '@/app/_line/inks';
import { paintLine, paintUnder, type Painting } from '@/app/_bench/drawing/paint-line';
import { drawSoon, forgetDrawing } from '@/app/_line/schedule';
import { type Frame, reachOf } from '@/app/_line/frame';
import type { Looks } from '@/app/_line/looks';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Spacing } from '@/shared/schemas/spacing';
import style from './projector.module.css';

export type Over = { spacing: Spacing; dashed: boolean };

type Props = {
  pack: Pack;
  spacing: Spacing;
  ground: Ground;
  looks: Looks;
  window: number;
  /** CSS px. */
  em: number;
  width: number;
  /** Settings laid over as outlines. */
  over: readonly Over[];
  /** Said of the canvas once this setting is painted, so that it can be told from outside when the wall shows it. */
  sent?: number;
};

/** Room over and under the letters, CSS px. */
const ROOM = 6;

/** One line of the wall, painted by the bench's own hand. */
export function WallLine({ pack, spacing, ground, looks, window, em, width, over, sent }: Props) {
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    const context = canvas?.getContext('2d');
    if (!canvas || !context) return;
    const draw = () => {
      const { frame, dpr } = framed(canvas, { pack, spacing, em, width, looks });
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.clearRect(0, 0, canvas.width, canvas.height);
      const from = Math.max(0, Math.min(window, pack.letters.length - 3));
      const open =
        looks.three && pack.letters.length > 3 ? { from, to: from + 2 } : { from: 0, to: pack.letters.length - 1 };
      const painting: Painting = {
        context,
        dpr,
        frame,
        art: lineArt(pack),
        placed: placeLetters(pack, spacing),
        document: spacing,
        inks: inksOf(ground),
        looks,
        window: open,
      };
      paintLine(painting);
      for (const { spacing: laid, dashed } of over) {
        context.setLineDash(dashed ? [0.05 * pack.unitsPerEm, 0.03 * pack.unitsPerEm] : []);
        const inks = dashed ? { ...painting.inks, note: painting.inks.mark } : painting.inks;
        paintUnder({ ...painting, inks, placed: placeLetters(pack, laid), document: laid });
      }
      context.setLineDash([]);
      canvas.style.filter = looks.blur ? `blur(${(0.028 * em).toFixed(2)}px)` : '';
      if (sent !== undefined) canvas.dataset.drawn = String(sent);
    };
    drawSoon(draw);
    return () => forgetDrawing(draw);
  }, [pack, spacing, ground, looks, window, em, width, over, sent]);
  return <canvas ref={canvasRef} className={style.canvas} aria-hidden="true" />;
}

type Fit = Pick<Props, 'pack' | 'spacing' | 'em' | 'width' | 'looks'>;

/** Height of a line in CSS px, the same whatever it is set like. */
export const heightOf = (pack: Pack, em: number): number =>
  Math.ceil((reachOf(pack).over + reachOf(pack).under) * em + 2 * ROOM);

/** How a line lies in its place; turned about its own middle, so that it stays where it is. */
export function frameOf({ pack, spacing, em, width, looks }: Fit): Frame {
  const scale = em / pack.unitsPerEm;
  const length = placeLetters(pack, spacing).width * scale;
  const originX = Math.round(0.08 * em);
  return {
    width,
    height: heightOf(pack, em),
    scale,
    originX,
    baselineY: Math.round(ROOM + reachOf(pack).over * em),
    flipX: looks.head !== looks.mirror,
    flipY: looks.head,
    axisX: originX + length / 2,
  };
}

function framed(canvas: HTMLCanvasElement, fit: Fit): { frame: Frame; dpr: number } {
  const frame = frameOf(fit);
  const dpr = globalThis.devicePixelRatio || 1;
  canvas.width = Math.round(frame.width * dpr);
  canvas.height = Math.round(frame.height * dpr);
  canvas.style.width = `${frame.width}px`;
  canvas.style.height = `${frame.height}px`;
  return { frame, dpr };
}
