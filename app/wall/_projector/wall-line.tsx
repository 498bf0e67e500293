'use client';
import { useEffect, useRef } from 'react';
import { inksOf } from '@/app/_line/inks';
import { drawSoon, filterFor, forgetDrawing, freshContext } from '@/app/_line/brush';
import { paintShapes } from '@/app/_line/painters';
import { lineShapes } from '@/shared/line/shapes';
import { type Frame, reachOf } from '@/app/_line/frame';
import { flipsOf, type Looks } from '@/shared/line/looks';
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

/** One line of the wall, painted as at the bench. */
export function WallLine({ pack, spacing, ground, looks, window, em, width, over, sent }: Props) {
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    if (!canvas) return;
    const draw = () => {
      const frame = frameOf({ pack, spacing, em, width, looks });
      const dpr = globalThis.devicePixelRatio || 1;
      const context = freshContext(canvas, frame, dpr);
      if (!context) return;
      const overlays = over.map((laid) => ({
        ...laid,
        over: true,
        ink: laid.dashed ? ('mark' as const) : ('note' as const),
      }));
      const shapes = lineShapes({ pack, spacing, looks, chosen: window, overlays });
      paintShapes({ context, dpr, frame, inks: inksOf(ground), em }, shapes);
      canvas.style.width = `${frame.width}px`;
      canvas.style.height = `${frame.height}px`;
      canvas.style.filter = filterFor(looks, em);
      if (sent !== undefined) canvas.dataset.drawn = String(sent);
    };
    drawSoon(draw);
    return () => forgetDrawing(draw);
  }, [pack, spacing, ground, looks, window, em, width, over, sent]);
  return <canvas ref={canvasRef} className={style.canvas} aria-hidden="true" />;
}

type Fit = Pick<Props, 'pack' | 'spacing' | 'em' | 'width' | 'looks'>;

/** Height of a line in CSS px, the same whatever it is set like. */
const heightOf = (pack: Pack, em: number): number =>
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
    ...flipsOf(looks),
    axisX: originX + length / 2,
  };
}
