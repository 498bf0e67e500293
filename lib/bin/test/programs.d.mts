export function chromium(): string | null;
export function installPrograms(): void;
