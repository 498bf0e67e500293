import * as z from 'zod';

/** Ids come from addresses: anything that can't be one of ours is answered as if it were not there. */
const id = z.string().min(1).max(64);

export const courseId = id;
export const memberId = id;
export const sectionId = id;
export const joinLinkId = id;
