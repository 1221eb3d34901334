/**
 * When something happened, by the server's clock: the device's time moved by the skew between its clock at sending
 * and the arrival here, and never after the arrival. All ISO 8601 UTC.
 */
export function happenedAtCorrected(
  { happenedAt, sentAt }: { readonly happenedAt: string; readonly sentAt: string },
  receivedAt: string,
): string {
  const received = Date.parse(receivedAt);
  const corrected = Date.parse(happenedAt) + (received - Date.parse(sentAt));
  return new Date(Math.min(corrected, received)).toISOString();
}
