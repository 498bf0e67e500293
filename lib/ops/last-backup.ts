import path from 'node:path';

/** Where the backup command leaves the instant of its last success, in the data directory. */
export const lastBackupFile = (dataDirectory: string): string => path.join(dataDirectory, 'last-backup');
