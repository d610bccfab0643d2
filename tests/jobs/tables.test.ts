import { memoryTables } from '../../src/jobs/tables.ts';
import { tablesContract } from './tablesContract.ts';

tablesContract(async () => memoryTables());
