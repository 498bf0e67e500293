const kept = globalThis as typeof globalThis & { kerncritServer?: boolean };

/**
 * Next calls this once when the server starts, before it answers anybody. The processes that open face files are started
 * before the first line is asked for.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const [{ warmWorkshop }, { doChoresEveryHour }, { prepareServerProcess }, { holdAsOnlyServer }, { env }] =
    await Promise.all([
      import('./lib/face/workshop/pool'),
      import('./lib/ops/every-hour'),
      import('./lib/http/server-process'),
      import('./lib/ops/one-server'),
      import('./lib/env'),
    ]);
  // Pages made while building serve nobody; a development server calls this again when a file changed.
  if (process.env.NEXT_PHASE !== 'phase-production-build' && !kept.kerncritServer) {
    kept.kerncritServer = true;
    try {
      holdAsOnlyServer(env().databaseUrl);
    } catch (error) {
      console.error(error instanceof Error ? error.message : error);
      process.exit(1);
    }
    prepareServerProcess(env());
  }
  // Not waited for: pages that need no face should not wait for it. What goes wrong shows itself at the first line.
  void warmWorkshop().catch(() => undefined);
  doChoresEveryHour();
}
