'use server';
import { finishGuidedLine } from '@/lib/account/finish-guided-line';
import { plainAction } from '@/lib/http/plain-action';

export const finishGuidedLineAction = plainAction(finishGuidedLine, (how: 'done' | 'skipped') => ({ how }));
