import { messages } from './say'

/** The form in which a weld's sizes and indications are written down. */
export const readingsWords = messages({
  en: {
    stations: 'Sizes',
    station: 'Station {n}', at: 'From the start', width: 'Width', legA: 'Upper leg', legB: 'Lower leg', legAVertical: 'Left leg', legBVertical: 'Right leg',
    throat: 'Throat', convexity: 'Convexity', reinforcement: 'Reinforcement', penetration: 'Penetration', rootConcavity: 'Root concavity',
    misalignment: 'Misalignment', underfill: 'Underfill', rootWidth: 'Root width', shrinkageGroove: 'Shrinkage groove', rootShortfall: 'Root short by', rootPore: 'Root pore',
    rootGap: 'Root gap', toeAngle: 'Toe angle', addStation: 'Add a station', moreSizes: 'More sizes these criteria judge', moreSizesHint: 'Judged only where taken. Once taken at one station, take it at every station. The toe angle is in degrees.', removeStation: 'Remove station {n}',
    looked: 'What did you look for?', lookedHint: 'Pressed means: looked, none found. Not pressed means: not looked for.',
    lookedAll: 'Looked for everything, none found', lookedRest: 'Looked for everything else, none found', seen: '{kind}: seen', craters: 'Are the craters filled?', fusion: 'Is the fusion complete, everywhere you can see?',
    yes: 'Yes', no: 'No', notLooked: 'Not looked', indications: 'What did you see?', addIndication: 'Place an indication', indication: 'Indication {n}',
    kind: 'What', chooseKind: 'Choose', length: 'Length', depth: 'Depth', diameter: 'Diameter', height: 'Height', toe: 'Which toe', toeA: 'Upper', toeB: 'Lower',
    toeAVertical: 'Left', toeBVertical: 'Right', toeNone: 'Neither', remove: 'Remove indication {n}', noneYet: 'Nothing placed. If you saw something, place it; if you looked and saw nothing, say so below.',
  },
  es: {
    stations: 'Medidas',
    station: 'Estación {n}', at: 'Desde el inicio', width: 'Ancho', legA: 'Cateto de arriba', legB: 'Cateto de abajo', legAVertical: 'Cateto izquierdo', legBVertical: 'Cateto derecho',
    throat: 'Garganta', convexity: 'Convexidad', reinforcement: 'Sobremonta', penetration: 'Penetración', rootConcavity: 'Concavidad de raíz',
    misalignment: 'Desalineación', underfill: 'Falta de relleno', rootWidth: 'Ancho de raíz', shrinkageGroove: 'Rechupe de raíz', rootShortfall: 'Falta en la raíz', rootPore: 'Poro de raíz',
    rootGap: 'Abertura de raíz', toeAngle: 'Ángulo del pie', addStation: 'Agregar una estación', moreSizes: 'Más medidas que juzga este criterio', moreSizesHint: 'Se juzgan solo si se toman. Si la tomas en una estación, tómala en todas. El ángulo del pie va en grados.', removeStation: 'Quitar la estación {n}',
    looked: '¿Qué buscaste?', lookedHint: 'Marcado quiere decir: busqué y no hay. Sin marcar quiere decir: no lo busqué.',
    lookedAll: 'Busqué todo y no encontré nada', lookedRest: 'Busqué todo lo demás y no encontré nada', seen: '{kind}: visto', craters: '¿Están llenos los cráteres?', fusion: '¿Hay fusión completa en todo lo que se ve?',
    yes: 'Sí', no: 'No', notLooked: 'No miré', indications: '¿Qué viste?', addIndication: 'Marcar una indicación', indication: 'Indicación {n}',
    kind: 'Qué', chooseKind: 'Elige', length: 'Largo', depth: 'Profundidad', diameter: 'Diámetro', height: 'Altura', toe: 'Qué pie', toeA: 'De arriba', toeB: 'De abajo',
    toeAVertical: 'Izquierdo', toeBVertical: 'Derecho', toeNone: 'Ninguno', remove: 'Quitar la indicación {n}', noneYet: 'Nada marcado. Si viste algo, márcalo; si buscaste y no viste nada, dilo abajo.',
  },
})
