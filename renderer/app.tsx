import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { clip } from '../geo/units/text.ts';
import './look/fonts.css';
import './look/theme.css';
import './look/window.css';
import './look/panel.css';
import './look/dialogs.css';
import './look/paper.css';
import { TopBar } from './bar/top-bar.tsx';
import { Dialogs } from './dialogs/dialogs.tsx';
import { Announcer } from './drive/announcer.tsx';
import { DriveView } from './drive/drive-view.tsx';
import { DropSign, dropFilesOn } from './drop.tsx';
import { inIdleTime, later } from './look/later.tsx';
import { followPalette } from './look/palette.ts';
import { openedDrive } from './state/opened.ts';
import { panelId, shownView, switchByKeys, tabId, type ViewId } from './state/views.ts';
import { StatusLine } from './status-line.tsx';
import { WaysAnnouncer } from './ways/announcer.tsx';

const loadYard = async () => (await import('./yard/yard-view.tsx')).YardView;
const loadSwing = async () => (await import('./swing/swing-view.tsx')).SwingView;
const loadLoad = async () => (await import('./load/load-view.tsx')).LoadView;
const YardView = later(loadYard);
const SwingView = later(loadSwing);
const LoadView = later(loadLoad);

/** The whole window: a bar with the views, the one that is shown, a line for what is going on. */
export function App() {
  useEffect(() => {
    const ends = [
      followPalette(document.documentElement, window),
      dropFilesOn(window),
      nameThePage(document),
      switchByKeys(window),
      inIdleTime([loadSwing, loadLoad, loadYard]),
    ];
    return () => {
      for (const end of ends) end();
    };
  }, []);
  return (
    <div class="window">
      <a class="skip" href={shownView.value === 'drive' ? '#findings' : `#${panelId(shownView.value)}`}>
        {shownView.value === 'drive' ? 'To the findings' : 'Past the bar'}
      </a>
      <TopBar />
      <main class="views">
        <View id="yard">
          <YardView />
        </View>
        <View id="drive" stays>
          <DriveView />
        </View>
        <View id="swing">
          <SwingView />
        </View>
        <View id="load">
          <LoadView />
        </View>
      </main>
      <StatusLine />
      <Announcer />
      <WaysAnnouncer />
      <DropSign />
      <Dialogs />
    </div>
  );
}

/**
 * One view under its tab.
 * @param stays keeps its size and place while another is shown, for what would lose them: map, strip, scrolled rows
 */
function View({ id, stays = false, children }: { id: ViewId; stays?: boolean; children: ComponentChildren }) {
  const shown = shownView.value === id;
  return (
    <div
      role="tabpanel"
      id={panelId(id)}
      class={shown ? 'view' : 'view view-away'}
      aria-labelledby={tabId(id)}
      tabIndex={-1}
      inert={!shown}
    >
      {(shown || stays) && children}
    </div>
  );
}

function nameThePage(page: Document): () => void {
  return openedDrive.subscribe((drive) => {
    page.title = drive ? `${clip(drive.followed.name || drive.followed.file)} · Lanegauge` : 'Lanegauge';
  });
}
