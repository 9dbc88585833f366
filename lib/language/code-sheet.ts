import { messages } from './say'

/** The sheet that hangs on the board so that students can join a class; and the line above it, for the screen only. */
export const codeSheet = messages({
  en: {
    joinClass: 'Join {name}', classCode: 'Class code', scan: 'Scan this with your phone’s camera,', orType: 'or open {address} and type the code.', typeProgram: 'The program is {slug}.',
    then: 'Type your name, choose a sign-in name and a password of at least 15 characters, and you are in.', until: 'Works until {when}', opens: 'Opens the join page with the code filled in',
    only: 'In English alone', both: 'In English and Spanish', noCode: 'No code opens this class now', noCodeText: 'Make one on the class page, then print it.', toClass: 'Back to the class',
    noCodeAsk: 'An instructor of the class makes one on its page; then it can be printed here.', toClasses: 'All classes',
    printed: 'Printed {at}.', lateNote: 'After that the code opens nothing: ask your instructor for the current one.',
  },
  es: {
    joinClass: 'Únete a {name}', classCode: 'Código de la clase', scan: 'Escanea esto con la cámara de tu teléfono,', orType: 'o abre {address} y escribe el código.', typeProgram: 'El programa es {slug}.',
    then: 'Escribe tu nombre, elige un nombre de usuario y una contraseña de al menos 15 caracteres, y ya estás dentro.', until: 'Sirve hasta el {when}', opens: 'Abre la página para unirse con el código puesto',
    only: 'Solo en español', both: 'En inglés y español', noCode: 'Ningún código abre esta clase ahora', noCodeText: 'Haz uno en la página de la clase y luego imprímelo.', toClass: 'Volver a la clase',
    noCodeAsk: 'Un instructor de la clase lo hace en la página de ella; luego se puede imprimir aquí.', toClasses: 'Todas las clases',
    printed: 'Impreso el {at}.', lateNote: 'Después el código no abre nada: pide el actual a tu instructor.',
  },
})
