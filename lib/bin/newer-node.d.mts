export function neededNode(): string;
export function isOldNode(version: string, needed?: string): boolean;
export function newerNode(machine?: { platform?: string; arch?: string }): string;
export function goOnUnder(node: string, words: readonly string[]): void;
