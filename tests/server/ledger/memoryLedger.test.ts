import { ledgerContract } from '#tests/support/ledgerContract.ts';
import { memoryLedger } from '#tests/support/serverMemoryLedger.ts';

ledgerContract('memory', async () => memoryLedger());
