/**
 * Is a folder on a network share? The catalogue's write-ahead log needs one machine with shared memory, so there we
 * refuse. Linux tells by the kind of file system, Windows by its address, macOS by its list of mounts.
 */
import { execFileSync } from 'node:child_process'
import { readFileSync, realpathSync, statfsSync } from 'node:fs'

/** Kinds of file system as statfs(2) of the Linux manual lists them. */
const networkTypes: ReadonlyMap<number, string> = new Map([
  [0x6969, 'NFS'],
  [0x517b, 'SMB'],
  [0xff534d42, 'CIFS'],
  [0xfe534d42, 'SMB 2'],
  [0x5346414f, 'AFS'],
  [0x6b414653, 'AFS'],
  [0x73757245, 'Coda'],
  [0x01021997, '9P'],
  [0x00c36400, 'Ceph'],
  [0x564c, 'NCP'],
])

/** Names in a list of mounts; FUSE hides the rest behind one number. */
const networkNames =
  /^(nfs4?|cifs|smb3?|smbfs|afs|afpfs|webdav|davfs2?|9p|ceph|glusterfs|lustre|fuse\.(sshfs|rclone|gvfsd-fuse|glusterfs|s3fs|davfs2?|cephfs|smbnetfs|curlftpfs|gcsfuse))$/

export interface Probe {
  readonly platform: string
  readonly realPath: (folder: string) => string
  readonly type: (folder: string) => number
  readonly mounts: () => string
}

export const machine: Probe = {
  platform: process.platform,
  realPath: folder => realpathSync.native(folder),
  type: folder => statfsSync(folder).type,
  mounts: () =>
    process.platform === 'darwin'
      ? execFileSync('/sbin/mount', { encoding: 'utf8', timeout: 2000 })
      : readFileSync('/proc/self/mounts', 'utf8'),
}

interface Mount {
  readonly point: string
  readonly kind: string
}

function parseMounts(text: string, platform: string): Mount[] {
  return text.split('\n').flatMap(line => {
    // macOS: `//me@host/share on /Volumes/share (smbfs, nodev)`. Linux: `host:/x /mnt/x nfs4 rw 0 0`, blanks as \040.
    const [, point, kind] = platform === 'darwin' ? (/ on (\/.*) \(([a-z0-9]+)/.exec(line) ?? []) : line.split(' ')
    if (point === undefined || kind === undefined) return []
    return [
      {
        point: point.replace(/\\([0-7]{3})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 8))),
        kind,
      },
    ]
  })
}

function mountOf(folder: string, mounts: readonly Mount[]): Mount | undefined {
  const holds = ({ point }: Mount) => folder === point || folder.startsWith(point.endsWith('/') ? point : `${point}/`)
  // The longest wins; of two on one point, the later hides the earlier.
  return mounts
    .filter(holds)
    .reduce<Mount | undefined>(
      (best, mount) => (best === undefined || mount.point.length >= best.point.length ? mount : best),
      undefined,
    )
}

/** The kind of share that holds the folder, in words; null for a disk of this machine. */
export function networkShare(folder: string, probe: Probe = machine): string | null {
  let real: string
  try {
    real = probe.realPath(folder)
  } catch {
    return null // it is not there: opening says so better
  }
  if (probe.platform === 'win32') return /^\\\\(?![.?]\\)|^\\\\\?\\UNC\\/i.test(real) ? 'Windows share' : null
  if (probe.platform === 'linux') {
    // Some file systems report their number signed.
    const known = networkTypes.get(probe.type(real) >>> 0)
    if (known !== undefined) return known
  }
  const kind = mountOf(real, parseMounts(probe.mounts(), probe.platform))?.kind
  return kind !== undefined && networkNames.test(kind) ? kind : null
}
