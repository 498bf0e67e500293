import type { Seat } from '@/lib/data/seats';
import { roundsAt } from '@/lib/work/rounds';

/** Lines, and so what was shown on them, are there for a student once a round has opened; for staff always. */
export const mayLook = (seat: Seat, now: Date): boolean =>
  seat.member.role !== 'student' || roundsAt(seat, now).current !== null;
