import { startApp } from './app.ts';

// not awaited at the top: Electron becomes ready only once this module has been read to its end
void startApp({
  argv: process.argv,
  folder: process.cwd(),
  env: process.env,
  platform: process.platform,
  resources: process.resourcesPath,
});
