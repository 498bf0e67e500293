import * as z from 'zod/mini';
import { courseSettingsSchema, type CourseSettings } from '@/shared/schemas/course';

/** The settings of a course row, checked on the way out. */
export const courseSettingsOf = (row: { settings: string }): CourseSettings =>
  z.parse(courseSettingsSchema, JSON.parse(row.settings));

/**
 * The settings of a course row with some of them changed, as they are stored; what this version does not know stays.
 */
export const changedCourseSettings = (row: { settings: string }, change: Partial<CourseSettings>): string =>
  JSON.stringify({ ...(JSON.parse(row.settings) as object), ...change });
