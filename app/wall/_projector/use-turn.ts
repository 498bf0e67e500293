'use client';
import { useEffect, useState, useSyncExternalStore } from 'react';

/** Which of two is shown now. It changes by itself every so many seconds, never with reduced motion, and by `swap`. */
export function useTurn(running: boolean, seconds: number): { second: boolean; swap: () => void; still: boolean } {
  const [second, setSecond] = useState(false);
  const still = useReducedMotion();
  useEffect(() => {
    if (!running || still) return;
    const timer = window.setInterval(() => setSecond((is) => !is), Math.max(0.5, seconds) * 1000);
    return () => window.clearInterval(timer);
  }, [running, seconds, still]);
  return { second, swap: () => setSecond((is) => !is), still };
}

const query = '(prefers-reduced-motion: reduce)';

function useReducedMotion(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => window.matchMedia(query).matches,
    () => false,
  );
}
