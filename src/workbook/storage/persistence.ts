/**
 * Asks the browser not to clear this site's storage when the device runs low, as it may with any site not asked
 * about. `granted`, `refused` (still kept, but the browser may clear it) or `unknown` where it cannot be asked.
 * Call from something the reader did, such as saving a first plan: some browsers show a question.
 */
export async function askToKeep(storage: Pick<StorageManager, 'persist' | 'persisted'> | undefined = globalThis.navigator?.storage): Promise<'granted' | 'refused' | 'unknown'> {
  if (storage?.persist === undefined) return 'unknown';
  try {
    return (await storage.persisted()) || (await storage.persist()) ? 'granted' : 'refused';
  } catch {
    return 'unknown';
  }
}
