import { AppError } from '@/lib/access/errors';

/** Ends a command that failed: prints the message for people, without a stack trace. */
export function fail(error: unknown): never {
  console.error(error instanceof AppError ? error.userMessage : error instanceof Error ? error.message : error);
  process.exit(1);
}
