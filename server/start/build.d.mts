export function ensureBuilt(options?: { parts?: 'all' | 'server' }): Promise<void>;
