// Imported first by every command. Plain old syntax on purpose: an old Node must be able to read this far.
const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Toeline needs Node 20.19 or newer and this is Node ${process.versions.node}: install a newer Node (24 is a good choice) and try again.`)
  process.exit(1)
}
