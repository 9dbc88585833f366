import type { IndicationKind } from '../scoring/types'
import { messages } from './say'

/** What an inspector sees, for rules of a program's own set. */
export const kindNames = messages<IndicationKind>({
  en: {
    crack: 'Cracks', 'crater-crack': 'Crater cracks', 'lack-of-fusion': 'Lack of fusion', undercut: 'Undercut', pore: 'Pores', overlap: 'Overlap',
    'crater-pipe': 'Crater pipe', 'poor-restart': 'Poor restarts', 'arc-strike': 'Arc strikes', spatter: 'Spatter', slag: 'Slag', 'burn-through': 'Burn-through',
  },
  es: {
    crack: 'Grietas', 'crater-crack': 'Grietas de cráter', 'lack-of-fusion': 'Falta de fusión', undercut: 'Socavado', pore: 'Poros', overlap: 'Traslape',
    'crater-pipe': 'Rechupe de cráter', 'poor-restart': 'Malos empalmes', 'arc-strike': 'Golpes de arco', spatter: 'Salpicaduras', slag: 'Escoria', 'burn-through': 'Perforación',
  },
})
