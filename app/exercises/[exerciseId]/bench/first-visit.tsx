'use client';
import { useState, type ReactNode } from 'react';
import { GuidedLine } from '@/app/_bench/guided-line';
import type { GuidedLineProps } from '@/app/_bench/props';
import { finishGuidedLineAction } from '../actions';

type Props = { guide: Omit<GuidedLineProps, 'onDone'> | null; children: ReactNode };

/**
 * The guided line before a student's first bench; the bench itself follows when it is done or skipped, and is the same
 * one, with all that was done on it, when the page later comes again without a guide.
 */
export function FirstVisit({ children, guide }: Props) {
  const [over, setOver] = useState(false);
  if (over || !guide) return children;
  const finish = async (how: 'done' | 'skipped') => {
    setOver(true);
    // If this isn't stored, the guide is merely offered once more.
    await finishGuidedLineAction(how);
  };
  return <GuidedLine {...guide} onDone={finish} />;
}
