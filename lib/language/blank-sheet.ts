import { messages } from './say'

/** The inspection sheet to fill in by hand, for when there is no power or no device. */
export const blankSheet = messages({
  en: {
    title: 'Inspection sheet', student: 'Student', booth: 'Booth', number: 'Coupon no.', date: 'Date', by: 'Inspected by', own: 'my own look', instructor: 'instructor',
    sizesIn: 'Sizes in inches, fractions as the gauge says them', sizesMm: 'Sizes in mm', seen: 'What was seen', onBead: 'Draw it where it is. Start at the left.', looked: 'Looked for, none found',
    notLooked: 'A box left empty means: not looked for.', rules: 'What decides', limit: 'Limit', depends: 'by what is measured; the app works it out', accept: 'Accept', reject: 'Reject', comment: 'What to change next', signature: 'Signature',
    later: 'Type it in when the power is back: the app judges it by the same limits.',
  },
  es: {
    title: 'Hoja de inspección', student: 'Estudiante', booth: 'Cabina', number: 'Probeta n.º', date: 'Fecha', by: 'Inspeccionó', own: 'mi propia revisión', instructor: 'instructor',
    sizesIn: 'Medidas en pulgadas, en fracciones como las da la galga', sizesMm: 'Medidas en mm', seen: 'Lo que se vio', onBead: 'Dibújalo donde está. El inicio a la izquierda.', looked: 'Se buscó y no hay',
    notLooked: 'Una casilla vacía quiere decir: no se buscó.', rules: 'Lo que decide', limit: 'Límite', depends: 'según lo que se mida; la aplicación lo calcula', accept: 'Aceptada', reject: 'Rechazada', comment: 'Qué cambiar la próxima vez', signature: 'Firma',
    later: 'Regístralo cuando vuelva la luz: la aplicación lo juzga con los mismos límites.',
  },
})
