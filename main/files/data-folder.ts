/** Where the program keeps what is the user's but not a catalogue's: recent catalogues, the demo, who sat here last. */
import { homedir } from 'node:os'
import { join } from 'node:path'

export function dataFolder(): string {
  const { HANGWRIGHT_DATA, APPDATA, XDG_DATA_HOME } = process.env
  if (HANGWRIGHT_DATA) return HANGWRIGHT_DATA
  if (process.platform === 'win32') return join(APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Hangwright')
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Hangwright')
  return join(XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'hangwright')
}
