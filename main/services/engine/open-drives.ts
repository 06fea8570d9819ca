/** Drives kept open at once; the oldest is let go. */
const DRIVES_MAX = 8;

/** Keeps a drive under its id as the latest of those that are open. */
export function keepDrive<T>(drives: Map<string, T>, driveId: string, drive: T): void {
  drives.set(driveId, drive);
  for (const id of drives.keys()) if (drives.size > DRIVES_MAX) drives.delete(id);
}
