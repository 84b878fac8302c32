/** The Electron host: windows, menus, dialogs. Everything that can be decided without Electron is in `shell.ts`. */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { app, BrowserWindow, dialog, ipcMain, Menu, type MenuItemConstructorOptions, protocol, session } from 'electron'
import { Refusal } from '../../../src/contract/refusal.ts'
import { createCatalogue } from '../../database/catalogue.ts'
import { recentCatalogues } from '../../database/recent.ts'
import { writeDemo } from '../../demo/write.ts'
import { disposition } from '../../files/names.ts'
import { machineClock } from '../../services/clock.ts'
import { answer } from '../answer.ts'
import { demoName, openAndRemember } from '../desk.ts'
import { createHost } from '../host.ts'
import { createPieces } from './pieces.ts'
import {
  answerAddress,
  answerMessage,
  callChannel,
  isOurAddress,
  origin,
  scheme,
  tellWindows,
  uploadChannel,
  windowPreferences,
} from './shell.ts'

app.enableSandbox()
protocol.registerSchemesAsPrivileged([
  { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, corsEnabled: false, bypassCSP: false } },
])

const here = fileURLToPath(new URL('.', import.meta.url))
const renderer = join(app.getAppPath(), 'renderer', 'built')
const windows = new Set<number>()
const log = (words: string) => console.error(words)

function main(): void {
  if (!app.requestSingleInstanceLock()) {
    app.quit()
    return
  }
  const host = createHost({
    kind: 'desktop',
    data: app.getPath('userData'),
    worker: new URL('./long.js', import.meta.url),
  })

  app.on('second-instance', () => BrowserWindow.getAllWindows()[0]?.focus())
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', event => {
      if (!isOurAddress(event.url)) event.preventDefault()
    })
    contents.on('will-redirect', event => {
      if (!isOurAddress(event.url)) event.preventDefault()
    })
    contents.on('will-frame-navigate', event => {
      if (!isOurAddress(event.url)) event.preventDefault()
    })
    contents.on('will-attach-webview', event => event.preventDefault())
    // Nothing is opened outside either: the program has no page elsewhere.
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  })

  ipcMain.handle(callChannel, (event, text: unknown) => answerMessage(host, windows, event, text, log))
  const pieces = createPieces(host, windows)
  ipcMain.handle(uploadChannel, (event, ...given: unknown[]) => pieces(event, given))
  host.subscribe(event =>
    tellWindows(event, (channel, text) => {
      for (const window of BrowserWindow.getAllWindows()) window.webContents.send(channel, text)
    }),
  )

  app.whenReady().then(async () => {
    session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
    session.defaultSession.setPermissionCheckHandler(() => false)
    session.defaultSession.setDevicePermissionHandler(() => false)
    session.defaultSession.setDisplayMediaRequestHandler((_request, answer) => answer({}))
    session.defaultSession.on('will-download', (_event, item) => item.setSaveDialogOptions({ title: 'Save' }))
    protocol.handle(scheme, async request => {
      const handle = /^\/download\/([^/?#]+)$/.exec(new URL(request.url).pathname)?.[1]
      if (handle !== undefined && isOurAddress(request.url)) return downloadOf(handle)
      const made = await answerAddress(host, renderer, request.url)
      return new Response(new Uint8Array(made.bytes), { status: made.status, headers: made.headers })
    })
    await openFirst()
    Menu.setApplicationMenu(menu())
    openWindow()
  })

  function downloadOf(handle: string): Response {
    try {
      const bytes = readFileSync(host.handles.path(handle))
      return new Response(new Uint8Array(bytes), {
        headers: {
          'Content-Type': 'application/octet-stream',
          'Content-Disposition': disposition(host.handles.name(handle)),
        },
      })
    } catch (error) {
      if (error instanceof Refusal) return new Response(null, { status: 404 })
      throw error
    }
  }

  app.on('window-all-closed', () => app.quit())
  app.on('will-quit', () => void host.close())

  /** The catalogue on the line, else the last one, else the demo, written once and kept. */
  async function openFirst(): Promise<void> {
    const asked = process.argv.slice(app.isPackaged ? 1 : 2).find(word => word.endsWith('.hangwright'))
    const last = recentCatalogues(host.data).find(recent => existsSync(recent.file))?.file
    const file = asked ?? last ?? join(host.data, demoName)
    if (!existsSync(file) && asked === undefined) {
      mkdirSync(host.data, { recursive: true })
      await writeDemo(file, { ...machineClock, thread: new URL('./picture-thread.js', import.meta.url) })
    }
    openOrSay(file)
  }

  function openOrSay(file: string): void {
    try {
      openAndRemember(host, file)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      dialog.showErrorBox('This catalogue could not be opened', error.message)
    }
  }

  async function chooseCatalogue(): Promise<void> {
    // Dialogs start in Downloads unless told otherwise, so the last folder is ours to remember.
    const defaultPath = recentCatalogues(host.data)[0]?.file ?? app.getPath('documents')
    const { filePaths } = await dialog.showOpenDialog({
      defaultPath,
      filters: [{ name: 'Hangwright catalogue', extensions: ['hangwright'] }],
      properties: ['openFile'],
    })
    if (filePaths[0] !== undefined) openOrSay(filePaths[0])
  }

  async function newCatalogue(): Promise<void> {
    const { filePath } = await dialog.showSaveDialog({
      defaultPath: join(app.getPath('documents'), 'catalogue.hangwright'),
      filters: [{ name: 'Hangwright catalogue', extensions: ['hangwright'] }],
    })
    if (!filePath) return
    try {
      createCatalogue(filePath, host.clock).close()
      openAndRemember(host, filePath)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      dialog.showErrorBox('The catalogue could not be made', error.message)
    }
  }

  /** Pictures and documents go along; the name is chosen in the dialog, the ending is ours. */
  async function chooseOtherPlace(name: 'catalogue.move' | 'catalogue.saveCopy', title: string): Promise<void> {
    const file = host.open?.catalogue.file
    if (file === undefined) return
    const { filePath } = await dialog.showSaveDialog({
      title,
      defaultPath: name === 'catalogue.move' ? file : file.replace(/\.hangwright$/, ' copy.hangwright'),
      filters: [{ name: 'Hangwright catalogue', extensions: ['hangwright'] }],
    })
    if (!filePath) return
    const answered = await answer(host, name, { folder: dirname(filePath), name: basename(filePath, '.hangwright') })
    if (!answered.ok) dialog.showErrorBox(title, answered.refusal.message)
  }

  function menu(): Menu {
    const template: MenuItemConstructorOptions[] = [
      ...(process.platform === 'darwin' ? [{ role: 'appMenu' as const }] : []),
      {
        label: 'Catalogue',
        submenu: [
          { label: 'New catalogue …', accelerator: 'CmdOrCtrl+N', click: () => void newCatalogue() },
          { label: 'Open catalogue …', accelerator: 'CmdOrCtrl+O', click: () => void chooseCatalogue() },
          { label: 'Save a copy …', click: () => void chooseOtherPlace('catalogue.saveCopy', 'Save a copy') },
          { label: 'Move …', click: () => void chooseOtherPlace('catalogue.move', 'Move the catalogue') },
          { type: 'separator' },
          { label: 'New window', accelerator: 'CmdOrCtrl+Shift+N', click: () => openWindow() },
          {
            label: 'Print …',
            accelerator: 'CmdOrCtrl+P',
            click: () => BrowserWindow.getFocusedWindow()?.webContents.print(),
          },
          { type: 'separator' },
          { role: 'quit' },
        ],
      },
      { role: 'editMenu' },
      { role: 'windowMenu' },
    ]
    return Menu.buildFromTemplate(template)
  }

  function openWindow(): void {
    const state = readWindowState()
    const window = new BrowserWindow({
      ...state,
      show: false,
      backgroundColor: '#EFEADF',
      webPreferences: { ...windowPreferences, preload: join(here, 'preload.cjs'), devTools: !app.isPackaged },
    })
    windows.add(window.webContents.id)
    const { id } = window.webContents
    window.on('close', () => keepWindowState(window))
    window.on('closed', () => windows.delete(id))
    window.once('ready-to-show', () => window.show())
    void window.loadURL(`${origin}/`)
  }

  const stateFile = () => join(host.data, 'window.json')

  function readWindowState(): { width: number; height: number; x?: number; y?: number } {
    try {
      const { width, height, x, y } = JSON.parse(readFileSync(stateFile(), 'utf8'))
      if ([width, height, x, y].every(Number.isFinite)) return { width, height, x, y }
    } catch {
      // No state yet, or one that can't be read: the usual size does.
    }
    return { width: 1440, height: 900 }
  }

  function keepWindowState(window: BrowserWindow): void {
    const next = `${stateFile()}.new`
    writeFileSync(next, JSON.stringify(window.getNormalBounds()))
    renameSync(next, stateFile())
  }
}

main()
