/** One event of a `text/event-stream` (HTML standard, section 9.2.6). JSON has no raw line feed, so one data line is enough. */
export function sseEvent(event: string, data: unknown, id?: number): string {
  const line = id === undefined ? '' : `id: ${id}\n`;
  return `event: ${event}\n${line}data: ${JSON.stringify(data)}\n\n`;
}
