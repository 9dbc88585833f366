import { messages } from './say'

/** The words around a scorecard: verdicts, columns, how sure a source is. */
export const scorecardWords = messages({
  en: {
    accept: 'Accept', reject: 'Reject', incomplete: 'Incomplete', 'not-measured': 'Not measured', 'not-applicable': 'Does not apply',
    incompleteWhy: 'Something a rule needs was not measured. That is never an accept.',
    mark: 'Mark', noMark: 'no mark', outOf: '{mark} of 100',
    between: '{min} to {max}', atMost: 'at most {max}', atLeast: 'at least {min}', none: 'none allowed', yes: 'yes', no: 'no', noneSeen: 'none seen', mustBe: 'must be so',
    'cratersFilled-yes': 'filled', 'cratersFilled-no': 'not filled', 'cratersFilled-must': 'must be filled',
    'fusionComplete-yes': 'complete', 'fusionComplete-no': 'not complete', 'fusionComplete-must': 'must be complete',
    notMeasured: 'not measured', inside: '{margin} inside', outside: '{margin} outside', onLimit: 'on the limit',
    closeCall: 'Within one step of the gauge: measure it again.',
    confirmed: 'read in the standard', secondary: 'from a handbook or agency text', memory: 'from memory, not read again', 'common-practice': 'common practice, no source',
    self: 'Your own look', instructor: 'Instructor’s look', second: 'Second reader’s look',
    selfOther: 'Student’s own look',
    reading: 'Reading', limit: 'Limit', margin: 'Margin', source: 'Source', rule: 'Rule',
    clause: '{title}, {clause}',
    station: 'Station {n}',
    inspectedBy: '{name}, {date}',
  },
  es: {
    accept: 'Se acepta', reject: 'Se rechaza', incomplete: 'Incompleta', 'not-measured': 'Sin medir', 'not-applicable': 'No aplica',
    incompleteWhy: 'No se midió algo que una regla necesita. Eso nunca es una aceptación.',
    mark: 'Nota', noMark: 'sin nota', outOf: '{mark} de 100',
    between: '{min} a {max}', atMost: 'máximo {max}', atLeast: 'mínimo {min}', none: 'no se permite', yes: 'sí', no: 'no', noneSeen: 'no se vio', mustBe: 'debe ser así',
    'cratersFilled-yes': 'llenos', 'cratersFilled-no': 'sin llenar', 'cratersFilled-must': 'deben estar llenos',
    'fusionComplete-yes': 'completa', 'fusionComplete-no': 'incompleta', 'fusionComplete-must': 'debe ser completa',
    notMeasured: 'sin medir', inside: '{margin} por dentro', outside: '{margin} por fuera', onLimit: 'justo en el límite',
    closeCall: 'A menos de un paso del calibrador: mídelo otra vez.',
    confirmed: 'leído en la norma', secondary: 'de un manual o texto de una agencia', memory: 'de memoria, sin volver a leerlo', 'common-practice': 'práctica común, sin fuente',
    self: 'Lo que tú viste', instructor: 'Lo que vio el instructor', second: 'Lo que vio el segundo inspector',
    selfOther: 'Lo que vio el estudiante',
    reading: 'Lectura', limit: 'Límite', margin: 'Margen', source: 'Fuente', rule: 'Regla',
    clause: '{title}, {clause}',
    station: 'Estación {n}',
    inspectedBy: '{name}, {date}',
  },
})
