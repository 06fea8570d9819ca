import { startApp } from './app.ts';
import { endWith } from './last-words.ts';

process.on('uncaughtException', endWith);
// not awaited at the top: Electron becomes ready only once this module has been read to its end
startApp({
  argv: process.argv,
  folder: process.cwd(),
  env: process.env,
  platform: process.platform,
  resources: process.resourcesPath,
}).catch(endWith);
