import { later } from '../look/later.tsx';
import { dialog } from '../state/page.ts';
import { FoundDrives } from '../take/found-drives.tsx';
import { Dialog } from './dialog.tsx';
import { OpenFiles } from './open-files.tsx';

const Help = later(async () => (await import('./loaded-later.ts')).Help);
const SettingsForm = later(async () => (await import('./loaded-later.ts')).SettingsForm);
const AboutRules = later(async () => (await import('./loaded-later.ts')).AboutRules);
const VehicleEditor = later(async () => (await import('./loaded-later.ts')).VehicleEditor);
const ShelfDialog = later(async () => (await import('./loaded-later.ts')).ShelfDialog);
const FetchDialog = later(async () => (await import('./loaded-later.ts')).FetchDialog);

const HandOver = later(async () => (await import('./loaded-later.ts')).HandOver);
const HandOverPairs = later(async () => (await import('./loaded-later.ts')).HandOverPairs);
const NoteDialog = later(async () => (await import('./loaded-later.ts')).NoteDialog);
const NotesDialog = later(async () => (await import('./loaded-later.ts')).NotesDialog);

export function Dialogs() {
  switch (dialog.value) {
    case 'open':
      return (
        <Dialog key="open" title="Open">
          <OpenFiles />
        </Dialog>
      );
    case 'drives':
      return (
        <Dialog title="Which drive?">
          <FoundDrives />
        </Dialog>
      );
    case 'shelf':
      return (
        <Dialog key="shelf" title="Your shelf of maps">
          <ShelfDialog />
        </Dialog>
      );
    case 'fetch':
      return (
        <Dialog key="fetch" title="Fetch the map of this drive">
          <FetchDialog />
        </Dialog>
      );
    case 'vehicles':
      return (
        <Dialog title="Vehicle cards" wide>
          <VehicleEditor />
        </Dialog>
      );
    case 'settings':
      return (
        <Dialog key="settings" title="Settings">
          <SettingsForm />
        </Dialog>
      );
    case 'help':
      return (
        <Dialog key="help" title="Help">
          <Help />
        </Dialog>
      );
    case 'handover':
      return (
        <Dialog key="handover" title="What the driver takes along" wide>
          <HandOver />
        </Dialog>
      );
    case 'hand-over-pairs':
      return (
        <Dialog key="hand-over-pairs" title="What the driver takes along" wide>
          <HandOverPairs />
        </Dialog>
      );
    case 'note':
      return (
        <Dialog key="note" title="Your note on this place">
          <NoteDialog />
        </Dialog>
      );
    case 'notes':
      return (
        <Dialog key="notes" title="Local notes">
          <NotesDialog />
        </Dialog>
      );
    case 'rules':
      return (
        <Dialog key="rules" title="About these rules">
          <AboutRules />
        </Dialog>
      );
    default:
      return null;
  }
}
