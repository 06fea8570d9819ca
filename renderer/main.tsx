import { render } from 'preact';
import { chooseHost } from './host/choose.ts';

const root = document.getElementById('app');
const chosen = await chooseHost(window);
const described = chosen.ok ? await chosen.value.call('describe', {}) : chosen;
if (root)
  render(
    <main>
      <h1>Lanegauge</h1>
      <p role="status">{described.ok ? described.value.program : described.error.message}</p>
    </main>,
    root,
  );
if (chosen.ok) await chosen.value.call('watch', {});
