/** The file in a data folder that holds its ledger. */
export const ledgerFile = 'spanwright.sqlite';
