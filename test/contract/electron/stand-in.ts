/**
 * What the desktop's main process uses of Electron, for a run of its bundle under Node: windows that show nothing,
 * dialogs that nobody answers, and `whatWasAsked`, where the test finds the handlers that the program registered.
 */
import { EventEmitter } from 'node:events'

interface Asked {
  readonly handlers: Map<string, (event: unknown, ...args: unknown[]) => unknown>
  protocol: ((request: { readonly url: string }) => Promise<Response>) | undefined
  readonly schemes: unknown[]
  readonly windows: BrowserWindow[]
  readonly errors: string[]
  readonly sent: string[]
  menu: readonly unknown[]
  sandboxed: boolean
}

export const whatWasAsked: Asked = {
  handlers: new Map(),
  protocol: undefined,
  schemes: [],
  windows: [],
  errors: [],
  sent: [],
  menu: [],
  sandboxed: false,
}

class App extends EventEmitter {
  readonly isPackaged = true
  enableSandbox(): void {
    whatWasAsked.sandboxed = true
  }
  requestSingleInstanceLock(): boolean {
    return true
  }
  getPath(): string {
    return process.env.HANGWRIGHT_DATA ?? ''
  }
  getAppPath(): string {
    return process.env.HANGWRIGHT_APP ?? ''
  }
  whenReady(): Promise<void> {
    return Promise.resolve()
  }
  quit(): void {
    this.emit('will-quit')
  }
}
export const app = new App()

class WebContents extends EventEmitter {
  readonly id: number
  constructor(id: number) {
    super()
    this.id = id
  }
  setWindowOpenHandler(): void {}
  send(channel: string, text: string): void {
    whatWasAsked.sent.push(`${channel} ${text}`)
  }
}

export class BrowserWindow extends EventEmitter {
  readonly options: unknown
  readonly webContents = new WebContents(whatWasAsked.windows.length + 1)
  address = ''
  constructor(options: unknown) {
    super()
    this.options = options
    whatWasAsked.windows.push(this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  static getAllWindows(): readonly BrowserWindow[] {
    return whatWasAsked.windows
  }
  static getFocusedWindow(): BrowserWindow | undefined {
    return whatWasAsked.windows[0]
  }
  show(): void {}
  focus(): void {}
  getNormalBounds(): object {
    return { x: 0, y: 0, width: 1440, height: 900 }
  }
  async loadURL(address: string): Promise<void> {
    this.address = address
    this.emit('ready-to-show')
  }
}

export const dialog = {
  showErrorBox: (title: string, words: string) => whatWasAsked.errors.push(`${title}: ${words}`),
  showOpenDialog: async () => ({ filePaths: [] }),
  showSaveDialog: async () => ({ filePath: '' }),
}
export const ipcMain = {
  handle: (channel: string, handler: (event: unknown, ...args: unknown[]) => unknown) =>
    whatWasAsked.handlers.set(channel, handler),
}
export const Menu = {
  buildFromTemplate: (template: readonly unknown[]) => template,
  setApplicationMenu(menu: readonly unknown[]) {
    whatWasAsked.menu = menu
  },
}
export const protocol = {
  registerSchemesAsPrivileged: (schemes: readonly unknown[]) => whatWasAsked.schemes.push(...schemes),
  handle(_scheme: string, handler: (request: { readonly url: string }) => Promise<Response>) {
    whatWasAsked.protocol = handler
  },
}
export const session = {
  defaultSession: {
    setPermissionRequestHandler() {},
    setPermissionCheckHandler() {},
    setDevicePermissionHandler() {},
    setDisplayMediaRequestHandler() {},
    on() {},
  },
}
