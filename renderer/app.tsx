import { useEffect } from 'preact/hooks';
import './look/fonts.css';
import './look/theme.css';
import './look/window.css';
import './look/panel.css';
import './look/dialogs.css';
import { TopBar } from './bar/top-bar.tsx';
import { Dialogs } from './dialogs/dialogs.tsx';
import { Announcer } from './drive/announcer.tsx';
import { Panel } from './drive/panel.tsx';
import { DropSign, dropFilesOn } from './drop.tsx';
import { followPalette } from './look/palette.ts';
import { DriveMap } from './map/drive-map.tsx';
import { Message } from './message.tsx';
import { openedDrive } from './state/state.ts';
import { StatusLine } from './status-line.tsx';

/** The whole window: a bar, the map, the panel, a line for what is going on. */
export function App() {
  useEffect(() => {
    const ends = [
      followPalette(document.documentElement, window),
      dropFilesOn(window),
      nameThePage(document),
    ];
    return () => {
      for (const end of ends) end();
    };
  }, []);
  return (
    <div class="window">
      <a class="skip" href="#findings">
        To the findings
      </a>
      <TopBar />
      <main class="sheet">
        <section class="map-place" aria-label="Map">
          <DriveMap />
          <Message />
        </section>
        <Panel />
      </main>
      <StatusLine />
      <Announcer />
      <DropSign />
      <Dialogs />
    </div>
  );
}

function nameThePage(page: Document): () => void {
  return openedDrive.subscribe((drive) => {
    page.title = drive ? `${drive.view.name || drive.view.file} · Lanegauge` : 'Lanegauge';
  });
}
