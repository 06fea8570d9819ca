import { EventEmitter } from 'node:events';

/** A hand-written stand-in for what Electron gives the main process: it records what it is told. */

export const ORIGIN = 'app://lanegauge';

type Handler = (event: unknown, ...words: unknown[]) => unknown;

export class FakeIpcMain extends EventEmitter {
  readonly handlers = new Map<string, Handler>();
  handle(channel: string, handler: Handler): void {
    this.handlers.set(channel, handler);
  }
}

export class FakeContents extends EventEmitter {
  static nextId = 1;
  readonly id = FakeContents.nextId++;
  readonly sent: unknown[][] = [];
  reloads = 0;
  openHandler: ((details: { url: string }) => { action: string }) | undefined;
  send(...words: unknown[]): void {
    this.sent.push(words);
    this.emit('sent', ...words);
  }
  isDestroyed(): boolean {
    return false;
  }
  reload(): void {
    this.reloads++;
  }
  forcefullyCrashRenderer(): void {
    this.emit('render-process-gone', {}, { reason: 'killed', exitCode: 9 });
  }
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
}

export class FakeWindow extends EventEmitter {
  static made: FakeWindow[] = [];
  readonly webContents = new FakeContents();
  loaded: string[] = [];
  shown = false;
  focused = 0;
  minimized = false;
  destroyed = false;
  readonly options: Record<string, unknown>;
  constructor(options: Record<string, unknown>) {
    super();
    this.options = options;
    FakeWindow.made.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  async loadURL(url: string): Promise<void> {
    this.loaded.push(url);
    this.emit('ready-to-show');
  }
  show(): void {
    this.shown = true;
  }
  focus(): void {
    this.focused++;
  }
  isMinimized(): boolean {
    return this.minimized;
  }
  restore(): void {
    this.minimized = false;
  }
  maximize(): void {}
  isMaximized(): boolean {
    return false;
  }
  isDestroyed(): boolean {
    return this.destroyed;
  }
  destroy(): void {
    this.destroyed = true;
  }
  getNormalBounds() {
    return { x: 10, y: 20, width: 1000, height: 700 };
  }
}

export class FakeSession {
  permissionRequest:
    | ((contents: unknown, permission: string, answer: (may: boolean) => void) => void)
    | undefined;
  permissionCheck: (() => boolean) | undefined;
  devicePermission: (() => boolean) | undefined;
  beforeRequest: ((details: { url: string }, answer: (a: { cancel: boolean }) => void) => void) | undefined;
  userAgent = '';
  readonly served = new Map<string, (request: Request) => Response | Promise<Response>>();
  readonly protocol = {
    handle: (scheme: string, handler: (request: Request) => Response | Promise<Response>) => {
      this.served.set(scheme, handler);
    },
  };
  readonly webRequest = {
    onBeforeRequest: (
      handler: (details: { url: string }, answer: (a: { cancel: boolean }) => void) => void,
    ) => {
      this.beforeRequest = handler;
    },
  };
  setPermissionRequestHandler(handler: FakeSession['permissionRequest']): void {
    this.permissionRequest = handler;
  }
  setPermissionCheckHandler(handler: () => boolean): void {
    this.permissionCheck = handler;
  }
  setDevicePermissionHandler(handler: () => boolean): void {
    this.devicePermission = handler;
  }
  setUserAgent(agent: string): void {
    this.userAgent = agent;
  }
}

class FakeApp extends EventEmitter {
  /** in the order they happened */
  readonly done: string[] = [];
  readonly recentDocuments: string[] = [];
  isPackaged = false;
  first = true;
  lockData: unknown;
  ready: () => void = () => {};
  private readonly becomesReady = new Promise<void>((resolve) => {
    this.ready = resolve;
  });
  userModelId = '';
  enableSandbox(): void {
    this.done.push('enableSandbox');
  }
  setAppUserModelId(id: string): void {
    this.userModelId = id;
  }
  requestSingleInstanceLock(data: unknown): boolean {
    this.done.push('lock');
    this.lockData = data;
    return this.first;
  }
  whenReady(): Promise<void> {
    this.done.push('whenReady');
    return this.becomesReady;
  }
  quit(): void {
    this.done.push('quit');
  }
  exit(code: number): void {
    this.done.push(`exit ${code}`);
  }
  addRecentDocument(path: string): void {
    this.recentDocuments.push(path);
  }
}

export const app = new FakeApp();
export const ipcMain = new FakeIpcMain();
export const session = { defaultSession: new FakeSession() };
export const protocol = {
  privileged: [] as unknown[],
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    app.done.push('registerSchemes');
    protocol.privileged.push(...schemes);
  },
};
export const shell = {
  opened: [] as string[],
  async openExternal(url: string): Promise<void> {
    shell.opened.push(url);
  },
  shown: [] as string[],
  showItemInFolder(path: string): void {
    shell.shown.push(path);
  },
};
export const crashReporter = {
  options: undefined as unknown,
  start(options: unknown): void {
    crashReporter.options = options;
  },
};
export const dialog = {
  errors: [] as string[],
  showErrorBox(title: string, text: string): void {
    dialog.errors.push(`${title}: ${text}`);
  },
  answers: [] as number[],
  asked: 0,
  showMessageBoxSync(): number {
    dialog.asked++;
    return dialog.answers.shift() ?? 1;
  },
  /** As Electron does: a question that is taken back is answered with its way out. */
  showMessageBox(_window: unknown, { cancelId, signal }: { cancelId: number; signal: AbortSignal }) {
    dialog.asked++;
    const given = dialog.answers.shift();
    return new Promise<{ response: number }>((answer) => {
      if (given !== undefined) answer({ response: given });
      signal.addEventListener('abort', () => answer({ response: cancelId }));
    });
  },
};
export const screen = {
  getDisplayMatching: () => ({ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }),
};
export const Menu = {
  set: undefined as unknown,
  buildFromTemplate: (template: unknown) => template,
  setApplicationMenu(menu: unknown): void {
    Menu.set = menu;
  },
};
export { FakeWindow as BrowserWindow };

/** The event a page's message comes with. */
export function eventFrom(sender: FakeContents, frame: { parent: unknown; origin: string } | null) {
  return { sender, senderFrame: frame };
}

export const TOP_FRAME = { parent: null, origin: ORIGIN };
