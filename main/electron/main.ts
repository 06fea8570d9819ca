import { dataFolder } from '../services/data-folder.ts';
import { startApp } from './app.ts';
import { endWith } from './last-words.ts';
import { openLog } from './program-log.ts';

const data = dataFolder(process.env, process.platform);
const log = openLog(data, () => new Date());
process.on('uncaughtException', (thrown) => endWith(log, thrown));
// not awaited at the top: Electron becomes ready only once this module has been read to its end
startApp({
  argv: process.argv,
  folder: process.cwd(),
  data,
  log,
  platform: process.platform,
  resources: process.resourcesPath,
}).catch((thrown) => endWith(log, thrown));
