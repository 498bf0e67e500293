/**
 * Signs for codes that people read and say: no vowels, so that no words arise; no letters or figures that are read for
 * one another.
 */
export const plainSigns = 'BCDFGHJKMNPQRTVWXZ2346789';

/** A part of a regular expression for one of them. */
export const plainSign = `[${plainSigns}]`;
