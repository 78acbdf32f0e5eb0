import type { Problem } from '../problem.ts';

/** Something kept under its `id`: a plain value that a database can copy. */
export interface Row {
  readonly id: string;
}

/** What is stored under one key, whoever wrote it: to be read before it is trusted. */
export interface FoundRow {
  readonly key: IDBValidKey;
  /** `undefined` when the browser itself cannot give the value back. */
  readonly value: unknown;
}

export type RowWrite =
  | { readonly store: string; readonly put: Row }
  | { readonly store: string; readonly remove: IDBValidKey };

export interface Transaction<T> {
  /** Rows to read, in this order, before deciding. */
  readonly read: readonly { readonly store: string; readonly key: IDBValidKey }[];
  /** Stores that `decide` may write to. */
  readonly writeTo: readonly string[];
  /** From the rows read (`undefined` where there is none) to the writes, which all happen or none. Synchronous and pure. */
  readonly decide: (rows: readonly unknown[]) => { readonly writes: readonly RowWrite[]; readonly result: T };
}

/**
 * Where rows are kept. Every operation either happens whole or rejects with `StorageError` having changed nothing.
 * Between the reads and the writes of one transaction nobody else, in this tab or another, can write.
 */
export interface Rows {
  /** Why rows last only as long as the page, or `undefined` when they are kept on the device. */
  readonly problem: Problem | undefined;
  all(store: string): Promise<readonly FoundRow[]>;
  transact<T>(transaction: Transaction<T>): Promise<T>;
  clear(stores: readonly string[]): Promise<void>;
  close(): void;
}

/** Storage refused or failed; `problem` says why in words for the reader. */
export class StorageError extends Error {
  override readonly name = 'StorageError';
  readonly problem: Problem;

  constructor(problem: Problem, cause?: unknown) {
    super(problem.message, { cause });
    this.problem = problem;
  }
}

/** The problem a failed operation is reported as; what is not a `StorageError` is a defect, and goes on up. */
export function problemOf(error: unknown): Problem {
  if (error instanceof StorageError) return error.problem;
  throw error;
}
