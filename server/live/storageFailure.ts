/** The ledger did not keep what it was asked to keep: nothing of it counts, and the device tries again. */
export class StorageFailure extends Error {
  override readonly name = 'StorageFailure';
}
