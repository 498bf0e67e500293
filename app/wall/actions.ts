'use server';
import { formAction } from '@/lib/http/form-action';
import { closeWall, openWall } from '@/lib/wall/walls';

export const openWallAction = formAction(openWall, {
  read: (form) => ({
    exerciseId: form.get('exerciseId'),
    roundNumber: form.get('roundNumber'),
    specimenId: form.get('specimenId'),
  }),
  then: ({ wallId }) => `/wall/${wallId}`,
});

export const closeWallAction = formAction(closeWall, {
  read: (form) => ({ wallId: form.get('wallId') }),
  then: ({ exerciseId, roundNumber }) => `/exercises/${exerciseId}/rounds/${roundNumber}/wall`,
});
