import { NO_TELEPHONE } from '../../main/contract/hand-over/no-firm.ts';
import { settings } from '../state/kept.ts';
import { dialog } from '../state/page.ts';

/** While no telephone is set, that a sheet has none for its driver to ring. */
export function NoTelephone() {
  if (settings.value.firm.telephone !== '') return null;
  return (
    <p class="problem">
      {NO_TELEPHONE} Set it, then hand over again.{' '}
      <button
        type="button"
        onClick={() => {
          dialog.value = 'settings';
        }}
      >
        Settings…
      </button>
    </p>
  );
}
