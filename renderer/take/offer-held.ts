import { clip, counted } from '../../geo/units/text.ts';
import { type Told, tellAlso } from '../state/happening.ts';
import { dialog } from '../state/page.ts';
import { showView } from '../state/views.ts';
import { addFromFile } from '../vehicle/fleet-work.ts';

/** A file that changes what is kept, the fleet or what is aboard: it is offered, and not taken unasked. */
export interface Held {
  readonly file: File;
  readonly kind: 'card' | 'load';
}

/** More buttons than this nobody tells apart. */
const MOST_OFFERED = 3;

/** Says what each file is and offers to take it; the others are offered still once one was taken. */
export function offerHeld(held: readonly Held[]): Told | undefined {
  if (held.length === 0) return undefined;
  const more = held.length - MOST_OFFERED;
  const offered = held.slice(0, MOST_OFFERED);
  return {
    kind: 'note',
    say: [
      ...offered.map(({ file, kind }) => `${clip(file.name, 80)} is a ${WHAT[kind]}.`),
      ...(more > 0
        ? [`${counted(more, 'card or load list', 'cards or load lists')} more will be offered after these.`]
        : []),
    ].join(' '),
    offers: offered.map((one) => ({
      say: sayOffer(one, held.length === 1),
      act: async () => {
        await take(one);
        tellAlso(offerHeld(held.filter((each) => each !== one)));
      },
    })),
  };
}

const WHAT = { card: 'vehicle card', load: 'load list' } as const;

function sayOffer({ file, kind }: Held, alone: boolean): string {
  const what = alone ? 'it' : clip(file.name, 30);
  return kind === 'card' ? `Add ${what} to the fleet` : `Put ${what} aboard`;
}

async function take({ file, kind }: Held): Promise<void> {
  if (kind === 'card') {
    dialog.value = 'vehicles';
    await addFromFile(file);
    return;
  }
  showView('load');
  const { openList } = await import('../load/state/load-file.ts');
  await openList(file);
}
