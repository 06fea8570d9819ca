import { ask } from '../host/ask.ts';
import { hostGone, notice } from '../state/happening.ts';
import { showView } from '../state/views.ts';
import { openAdded } from './open.ts';

/** A laptop that slept may find its line cut; the program behind it is still there. */
const TRIES_AFTER_A_CUT = 3;
const TRY_AGAIN_MS = 1000;

/** Hears what the host says first, for as long as the page is open: files handed over, and what should be known. */
export async function listen(): Promise<void> {
  for (let cuts = 0; cuts < TRIES_AFTER_A_CUT; cuts++) {
    const reply = await ask(
      'watch',
      {},
      {
        onProgress: (news) => {
          cuts = 0;
          if (news.kind === 'opened') {
            showView('drive');
            void openAdded([news.file]);
          }
          if (news.kind === 'notice') notice.value = { kind: 'note', say: news.say };
        },
      },
    );
    if (!reply.ok && reply.error.code !== 'host-gone') {
      hostGone.value = reply.error.message;
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, TRY_AGAIN_MS));
  }
  hostGone.value =
    'The program behind this window has ended. What is shown stays readable, but nothing can be opened or checked. Close the window and start Lanegauge again.';
}
