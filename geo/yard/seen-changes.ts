import type { DifferenceKind } from '../library/differences/difference.ts';
import type { Level } from '../report/level.ts';

/** As much of a change as tells it from others. */
interface Change {
  readonly kind: DifferenceKind;
  readonly finding: string;
  readonly now?:
    | { readonly level: Level; readonly limit?: { readonly asMapped: string } | undefined }
    | undefined;
}

/** A change as it is acknowledged: which one, and what it came to. */
export interface SeenChange {
  readonly kind: DifferenceKind;
  readonly finding: string;
  readonly mark?: string;
}

/** That a person has seen changes of one drive with one vehicle, on whatever computer. */
export interface Acknowledgement {
  readonly id: string;
  readonly drive: string;
  readonly vehicle: string;
  readonly changes: readonly SeenChange[];
}

/** A change as it is kept once it was seen. It says what there is now: what there was hangs on when one last looked. */
export function seenChange({ kind, finding, now }: Change): SeenChange & { readonly mark: string } {
  return { kind, finding, mark: now === undefined ? '' : `${now.level} ${now.limit?.asMapped ?? ''}`.trim() };
}

/** What of the changes is still to be seen. */
export interface StillToSee<C> {
  readonly changes: readonly C[];
  /** ids of the acknowledgements that answered one of them */
  readonly answered: readonly string[];
}

/**
 * The changes that nobody has acknowledged. Each acknowledgement answers once: what comes back after it is news again.
 * @param settled ids of those that have answered already, or that are older than what the changes are told against
 */
export function stillToSee<C extends Change>(
  changes: readonly C[],
  acknowledged: readonly Acknowledgement[],
  settled: readonly string[],
): StillToSee<C> {
  const open = acknowledged.filter(({ id }) => !settled.includes(id));
  const answersTo = (change: C) => {
    const asked = JSON.stringify(seenChange(change));
    return open.filter(({ changes: seen }) =>
      seen.some(({ kind, finding, mark }) => JSON.stringify({ kind, finding, mark }) === asked),
    );
  };
  const answers = changes.map(answersTo);
  return {
    changes: changes.filter((_, i) => answers[i]?.length === 0),
    answered: [...new Set(answers.flat().map(({ id }) => id))],
  };
}
