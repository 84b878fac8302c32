/** better-sqlite3 13 is built for Node-API 10: below Node 22.14 it ends the process without a word. */
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
if (major < 22 || (major === 22 && minor < 14)) {
  throw new Error(`Tests need Node 22.14 or later, this is ${process.version}. Start them with: npm test`)
}
