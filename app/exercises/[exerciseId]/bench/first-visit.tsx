'use client';
import { useState, type ReactNode } from 'react';
import { GuidedLine } from '@/app/_bench/guided-line';
import type { GuidedLineProps } from '@/app/_bench/props';
import { finishGuidedLineAction } from '../actions';

type Props = Omit<GuidedLineProps, 'onDone'> & { children: ReactNode };

/** The guided line before a student's first bench; when it is done or left, the bench itself. */
export function FirstVisit({ children, ...guide }: Props) {
  const [over, setOver] = useState(false);
  if (over) return children;
  const finish = async (how: 'done' | 'skipped') => {
    setOver(true);
    // Not remembered is no harm: the guide is offered once more.
    await finishGuidedLineAction(how);
  };
  return <GuidedLine {...guide} onDone={finish} />;
}
