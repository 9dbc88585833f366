// node scripts/run.cjs NAME [arguments]: what the npm scripts call. The commands themselves are written for a new Node, and an
// old one would stop at their syntax before it could say why. They begin with exec so that no shell stands between npm and us,
// which would keep npm's signals to itself.
require('./node-version.cjs')

import('./' + process.argv.splice(2, 1)[0] + '.mjs')
