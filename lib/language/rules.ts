import type { Reading } from '../criteria/types'
import { messages } from './say'

/** Short trade names of the rules of the built-in sets, for tables. ISO 5817 items go by their ISO 6520-1 numbers. */
export const ruleNames = messages({
  en: {
    'width-in-band': 'Bead width', 'width-consistency': 'Even width', 'leg-size': 'Leg size', 'leg-balance': 'Leg balance',
    crack: 'Cracks', fusion: 'Fusion', crater: 'Craters', undercut: 'Undercut', porosity: 'Porosity', restart: 'Restarts', cleaning: 'Cleaning',
    convexity: 'Convexity', overlap: 'Overlap', reinforcement: 'Reinforcement', 'root-concavity': 'Root concavity', 'melt-through': 'Melt-through',
    'porosity-per-inch': 'Porosity, short stretch', 'porosity-per-12-inches': 'Porosity, long stretch', 'porosity-frequency': 'Pore spacing',
    'porosity-diameter': 'Pore size', 'porosity-across-tension': 'Porosity across tension',
    '100': 'Cracks', '104': 'Crater cracks', '2017': 'Surface pores', '2025': 'End crater pipe', '401': 'Lack of fusion', '5011': 'Undercut',
    '4021': 'Incomplete root penetration', '5013': 'Shrinkage groove', '504': 'Excess penetration', '505': 'Incorrect weld toe', '516': 'Root porosity', '617': 'Gap under the fillet',
    '502': 'Excess weld metal', '503': 'Excessive convexity', '506': 'Overlap', '507': 'Linear misalignment', '510': 'Burn-through',
    '511': 'Incompletely filled groove', '512': 'Asymmetry of the fillet', '515': 'Root concavity', '517': 'Poor restart',
    '5213': 'Insufficient throat', '5214': 'Excessive throat', '601': 'Stray arc', '602': 'Spatter',
  },
  es: {
    'width-in-band': 'Ancho del cordón', 'width-consistency': 'Ancho parejo', 'leg-size': 'Tamaño del cateto', 'leg-balance': 'Catetos parejos',
    crack: 'Grietas', fusion: 'Fusión', crater: 'Cráteres', undercut: 'Socavado', porosity: 'Porosidad', restart: 'Empalmes', cleaning: 'Limpieza',
    convexity: 'Convexidad', overlap: 'Traslape', reinforcement: 'Sobremonta', 'root-concavity': 'Concavidad de la raíz', 'melt-through': 'Descuelgue en la raíz',
    'porosity-per-inch': 'Porosidad, tramo corto', 'porosity-per-12-inches': 'Porosidad, tramo largo', 'porosity-frequency': 'Separación de poros',
    'porosity-diameter': 'Tamaño de poros', 'porosity-across-tension': 'Porosidad transversal a la tensión',
    '100': 'Grietas', '104': 'Grietas de cráter', '2017': 'Poros superficiales', '2025': 'Rechupe de cráter', '401': 'Falta de fusión', '5011': 'Socavado',
    '4021': 'Penetración incompleta de la raíz', '5013': 'Rechupe de la raíz', '504': 'Exceso de penetración', '505': 'Pie del cordón incorrecto', '516': 'Porosidad de la raíz', '617': 'Abertura bajo el filete',
    '502': 'Sobremonta excesiva', '503': 'Convexidad excesiva', '506': 'Traslape', '507': 'Desalineación', '510': 'Perforación',
    '511': 'Ranura sin llenar', '512': 'Asimetría del filete', '515': 'Concavidad de la raíz', '517': 'Mal empalme',
    '5213': 'Garganta insuficiente', '5214': 'Garganta excesiva', '601': 'Golpe de arco', '602': 'Salpicaduras',
  },
})


/** What is measured at a station, for rules of a program's own set. */
export const readingNames = messages<Reading>({
  en: {
    width: 'Bead width', 'shortest-leg': 'Shortest leg', 'leg-difference': 'Leg balance', throat: 'Throat', convexity: 'Convexity', reinforcement: 'Reinforcement',
    penetration: 'Penetration', 'root-concavity': 'Root concavity', misalignment: 'Misalignment', underfill: 'Underfill',
    'shrinkage-groove': 'Shrinkage groove', 'root-shortfall': 'Incomplete root penetration', 'root-pore': 'Root pore', 'root-gap': 'Root gap', 'toe-angle': 'Toe angle',
  },
  es: {
    width: 'Ancho del cordón', 'shortest-leg': 'Cateto menor', 'leg-difference': 'Catetos parejos', throat: 'Garganta', convexity: 'Convexidad', reinforcement: 'Sobremonta',
    penetration: 'Penetración', 'root-concavity': 'Concavidad de la raíz', misalignment: 'Desalineación', underfill: 'Falta de llenado',
    'shrinkage-groove': 'Rechupe de la raíz', 'root-shortfall': 'Penetración incompleta de la raíz', 'root-pore': 'Poro de raíz', 'root-gap': 'Abertura de raíz', 'toe-angle': 'Ángulo del pie',
  },
})
