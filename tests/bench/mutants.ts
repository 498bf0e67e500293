import { runMutants } from './mutants/run-mutants';

/**
 * `npm run -s bench -- mutants`: changes the core's code in one place at a time and counts what the tests notice. Takes
 * up where it was ended. MUTANTS names rooms or files, with commas between them; all of them by default. See
 * mutants/README.md.
 */
export default function mutants() {
  return runMutants((process.env.MUTANTS ?? '').split(',').filter(Boolean));
}
