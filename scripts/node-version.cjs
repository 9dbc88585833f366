// Loaded first by every command. Old syntax on purpose: an old Node must be able to read it.
var numbers = process.versions.node.split('.').map(Number)
if (numbers[0] < 20 || (numbers[0] === 20 && numbers[1] < 19)) {
  console.error('Toeline needs Node 20.19 or newer and this is Node ' + process.versions.node + ': install a newer Node (24 is a good choice) and try again.')
  process.exit(1)
}
