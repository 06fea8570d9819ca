import { Menu, type MenuItemConstructorOptions, shell } from 'electron';

const RECENT: MenuItemConstructorOptions = {
  label: 'Open Recent',
  role: 'recentDocuments',
  submenu: [{ label: 'Clear', role: 'clearRecentDocuments' }],
};

const VIEW: MenuItemConstructorOptions[] = [
  { role: 'reload' },
  { type: 'separator' },
  { role: 'resetZoom' },
  { role: 'zoomIn' },
  { role: 'zoomOut' },
  { type: 'separator' },
  { role: 'togglefullscreen' },
];

/**
 * The system's own entries under their usual keys; everything else is in the window.
 * @param logPath the file that says what went wrong in the program
 */
export function setMenu(platform: NodeJS.Platform, logPath: string): void {
  const mac = platform === 'darwin';
  const file: MenuItemConstructorOptions[] = mac ? [RECENT, { role: 'close' }] : [{ role: 'quit' }];
  const template: MenuItemConstructorOptions[] = [
    { label: '&File', submenu: file },
    { role: 'editMenu' },
    { label: '&View', submenu: VIEW },
    { role: 'windowMenu' },
    {
      role: 'help',
      submenu: [{ label: 'Show the program’s log file', click: () => shell.showItemInFolder(logPath) }],
    },
  ];
  if (mac) template.unshift({ role: 'appMenu' });
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
