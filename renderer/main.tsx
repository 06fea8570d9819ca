import { render } from 'preact';
import { keepHistory } from './actions/history.ts';
import { start } from './actions/start.ts';
import { App } from './app.tsx';
import { setHost } from './host/ask.ts';
import { chooseHost } from './host/choose.ts';
import { hostGone } from './state/happening.ts';

// the host is asked before the page is drawn: it answers meanwhile
const choosing = chooseHost(window);
const root = document.getElementById('app');
if (root) render(<App />, root);
const chosen = await choosing;
if (chosen.ok) {
  setHost(chosen.value);
  await start(window.sessionStorage);
  keepHistory(window);
} else hostGone.value = chosen.error.message;
