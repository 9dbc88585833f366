// node scripts/run.cjs NAME [arguments]: what the npm scripts call. The commands themselves are written for a new Node, and an
// old one would stop at their syntax before it could say why.
require('./node-version.cjs')

import('./' + process.argv.splice(2, 1)[0] + '.mjs')
