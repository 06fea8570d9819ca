import { render } from 'preact';
import { App } from './app.tsx';
import { chooseHost } from './host/choose.ts';
import { setHost } from './state/host.ts';
import { start } from './state/start.ts';
import { hostGone } from './state/ui.ts';

const root = document.getElementById('app');
if (root) render(<App />, root);
const chosen = await chooseHost(window);
if (chosen.ok) {
  setHost(chosen.value);
  await start(window.sessionStorage);
} else hostGone.value = chosen.error.message;
