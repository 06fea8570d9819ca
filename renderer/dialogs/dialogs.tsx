import { dialog } from '../state/page.ts';
import { FoundDrives } from '../take/found-drives.tsx';
import { VehicleEditor } from '../vehicle/vehicle-editor.tsx';
import { Dialog } from './dialog.tsx';
import { Help } from './help.tsx';
import { later } from './later.tsx';
import { OpenFiles } from './open-files.tsx';
import { SettingsForm } from './settings-form.tsx';

const AboutRules = later(async () => (await import('./about-rules.tsx')).AboutRules);
const ShelfDialog = later(async () => (await import('../shelf/shelf-dialog.tsx')).ShelfDialog);
const FetchDialog = later(async () => (await import('../shelf/fetch/fetch-dialog.tsx')).FetchDialog);

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
