import type { Page } from '@playwright/test';

/** Milliseconds from frame to frame, and what the callbacks of each frame took. */
export type Frames = { intervals: number[]; script: number[] };

export const marksOf = (page: Page) =>
  page.evaluate(() => {
    const at = (name: string) => performance.getEntriesByName(name)[0]!.startTime;
    return { asked: at('map-asked'), came: at('map-came'), done: at('map-drawn') };
  });

/**
 * Scrolls the map, or an empty canvas made as large and as sticky, for three seconds: down and to the right by more
 * than a row and a column each frame, back from the end, so that every frame has new cells to paint.
 */
export const framesWhile = (page: Page, what: 'map' | 'empty'): Promise<Frames> =>
  page.evaluate(async (asked) => {
    const map = document.querySelector<HTMLElement>('[role=grid]')!;
    const scroller = asked === 'map' ? map : emptyLike(map);
    scroller.scrollTo(0, 0);
    const intervals: number[] = [],
      script: number[] = [];
    let last = performance.now(),
      begun = last,
      down = 37,
      right = 41;
    await new Promise<void>((resolve) => {
      const step = (now: number) => {
        intervals.push(now - last);
        last = now;
        if (scroller.scrollTop + scroller.clientHeight >= scroller.scrollHeight - 1) down = -Math.abs(down);
        if (scroller.scrollTop <= 0) down = Math.abs(down);
        if (scroller.scrollLeft + scroller.clientWidth >= scroller.scrollWidth - 1) right = -Math.abs(right);
        if (scroller.scrollLeft <= 0) right = Math.abs(right);
        scroller.scrollBy(right, down);
        if (now - begun > 3000) return resolve();
        requestAnimationFrame(step);
        // Scroll events precede the next frame’s callbacks; a task after them sees all of it done.
        const from = performance.now();
        const channel = new MessageChannel();
        channel.port1.onmessage = () => script.push(performance.now() - from);
        channel.port2.postMessage(null);
      };
      requestAnimationFrame((now) => {
        last = begun = now;
        requestAnimationFrame(step);
      });
    });
    if (asked === 'empty') scroller.remove();
    return { intervals, script };

    function emptyLike(model: HTMLElement): HTMLElement {
      const box = document.createElement('div'),
        canvas = document.createElement('canvas'),
        room = document.createElement('div');
      Object.assign(box.style, { position: 'relative', overflow: 'auto', height: `${model.clientHeight}px` });
      Object.assign(canvas.style, {
        position: 'sticky',
        top: '0',
        left: '0',
        display: 'block',
        width: `${model.clientWidth}px`,
        height: `${model.clientHeight}px`,
      });
      Object.assign(room.style, {
        position: 'absolute',
        top: '0',
        left: '0',
        width: `${model.scrollWidth}px`,
        height: `${model.scrollHeight}px`,
      });
      canvas.width = model.clientWidth;
      canvas.height = model.clientHeight;
      box.append(canvas, room);
      model.before(box);
      const context = canvas.getContext('2d', { alpha: false })!;
      let frame = 0;
      box.addEventListener('scroll', () => {
        frame ||= requestAnimationFrame(() => {
          frame = 0;
          context.fillRect(0, 0, canvas.width, canvas.height);
        });
      });
      return box;
    }
  }, what);
