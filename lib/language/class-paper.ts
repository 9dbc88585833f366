import { messages } from './say'

/** What is printed for a whole class: its sheet and its coupon tags. */
export const classPaper = messages({
  en: {
    page: 'Page {n} of {of}.', printedAt: 'Printed {at}.', classSheet: 'Class sheet, practice record', student: 'Student', booth: 'Booth', noBooth: 'no booth', unsigned: 'cautions unsigned', unsignedMark: 'C',
    sheetNote: 'In each place: the chance of passing the next test coupon with a bar as long, or the coupons there are of those an estimate takes; then coupons accepted of those inspected, and logged. C: the cautions are not signed this term.',
    accepted: '{a} of {b}', logged: '{n} logged', notStarted: 'none', noStudents: 'No students in this class yet.', noExercises: 'No exercises in this class yet.',
    summaries: 'Progress summaries of the class', tags: 'Coupon tags', exercise: 'Exercise', number: 'Coupon no.', date: 'Date', scan: 'Opens the log',
  },
  es: {
    page: 'Página {n} de {of}.', printedAt: 'Impreso el {at}.', classSheet: 'Hoja de la clase, registro de práctica', student: 'Estudiante', booth: 'Cabina', noBooth: 'sin cabina', unsigned: 'precauciones sin firmar', unsignedMark: 'P',
    sheetNote: 'En cada lugar: la probabilidad de pasar la próxima probeta de prueba con una barra de ese largo, o las probetas que hay de las que necesita una estimación; luego las aceptadas de las inspeccionadas, y las registradas. P: las precauciones no están firmadas este periodo.',
    accepted: '{a} de {b}', logged: '{n} registradas', notStarted: 'ninguna', noStudents: 'Todavía no hay estudiantes en esta clase.', noExercises: 'Todavía no hay ejercicios en esta clase.',
    summaries: 'Resúmenes de avance de la clase', tags: 'Etiquetas de probeta', exercise: 'Ejercicio', number: 'Probeta n.º', date: 'Fecha', scan: 'Abre el registro',
  },
})
