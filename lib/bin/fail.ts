import { AppError } from '@/lib/access/errors';

/** Ends a command that went wrong: what is for people is said, without a trace. */
export function fail(error: unknown): never {
  console.error(error instanceof AppError ? error.userMessage : error instanceof Error ? error.message : error);
  process.exit(1);
}
