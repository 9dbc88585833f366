import { casesOf, GROOVE, type Change, type LimitCase } from './limits-case'

const PRACTICE = 'Common practice, no source'
const HALF_STEP = 25.4 / 128 // of a gauge that reads 1/64 in

const shop = (rule: string) => casesOf('shop-bead', rule, PRACTICE)
const width = shop('width-in-band')
const consistency = shop('width-consistency')
const leg = shop('leg-size')
const balance = shop('leg-balance')
const undercut = shop('undercut')

// 1/16 in wire: a bead 5/16 to 3/8 in wide.
const wide = (widthMm: number): Change => ({ weld: { electrodeDiameterMm: 25.4 / 16 }, at: { widthMm } })
const varying = (difference: number): Change => ({ stations: [{ atMm: 20, widthMm: 8 }, { atMm: 200, widthMm: 8 + difference }, { atMm: 380, widthMm: 8.2 }] })
const legs = (a: number, b = a): Change => ({ at: { legAMm: a, legBMm: b } })
const deep = (depthMm: number): Change => ({ indications: [{ kind: 'undercut', atMm: 30, lengthMm: 4, depthMm, toe: 'A' }] })

export const shopCases: readonly LimitCase[] = [
  width.accepts('1/16 in wire, 5/16 in wide', wide((25.4 * 5) / 16)),
  width.rejects('1/16 in wire, a hair under 5/16 in', wide((25.4 * 5) / 16 - 0.01)),
  width.accepts('1/16 in wire, 3/8 in wide', wide((25.4 * 3) / 8)),
  width.rejects('1/16 in wire, a hair over 3/8 in', wide((25.4 * 3) / 8 + 0.01)),
  width.rejects('one station of three too narrow', { weld: { electrodeDiameterMm: 2 }, stations: [{ atMm: 10, widthMm: 11 }, { atMm: 200, widthMm: 9.9 }, { atMm: 300, widthMm: 11 }] }),
  ...consistency.edge('widest less narrowest', varying, 25.4 / 16, 25.4 / 16 + HALF_STEP),
  leg.accepts('both legs the size asked for', legs(8)),
  leg.rejects('a hair under', legs(8, 7.99)),
  leg.ignores('a groove has no legs', { weld: GROOVE }),
  balance.ignores('a groove', { weld: GROOVE }),
  ...balance.edge('legs apart', (difference) => legs(8, 8 + difference), (25.4 * 3) / 32, (25.4 * 3) / 32 + HALF_STEP),
  ...undercut.edge('undercut', deep, 25.4 / 32, 25.4 / 32 + HALF_STEP),
  shop('crack').accepts('none', {}),
  shop('crack').rejects('a crack', { indications: [{ kind: 'crack', atMm: 4 }] }),
  shop('crack').rejects('a crater crack', { indications: [{ kind: 'crater-crack', atMm: 400 }] }),
  shop('fusion').accepts('complete', {}),
  shop('fusion').rejects('not complete', { fusionComplete: false }),
  shop('fusion').rejects('lack of fusion seen', { indications: [{ kind: 'lack-of-fusion', atMm: 0 }] }),
  shop('fusion').rejects('overlap seen', { indications: [{ kind: 'overlap', atMm: 0 }] }),
  shop('fusion').rejects('burned through', { indications: [{ kind: 'burn-through', atMm: 0 }] }),
  shop('crater').accepts('filled', {}),
  shop('crater').rejects('not filled', { cratersFilled: false }),
  shop('crater').rejects('a pipe in the crater', { indications: [{ kind: 'crater-pipe', atMm: 399 }] }),
  shop('porosity').accepts('none', {}),
  shop('porosity').rejects('one small pore', { indications: [{ kind: 'pore', atMm: 9, diameterMm: 0.3 }] }),
  shop('restart').accepts('none', {}),
  shop('restart').rejects('a poor restart', { indications: [{ kind: 'poor-restart', atMm: 200 }] }),
  shop('cleaning').accepts('clean', {}),
  shop('cleaning').rejects('spatter', { indications: [{ kind: 'spatter', atMm: 1 }] }),
  shop('cleaning').rejects('slag', { indications: [{ kind: 'slag', atMm: 1 }] }),
  shop('cleaning').rejects('an arc strike', { indications: [{ kind: 'arc-strike', atMm: 1 }] }),
]
