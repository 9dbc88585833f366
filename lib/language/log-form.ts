import { messages } from './say'

/**
 * The words every log form shows before anything goes wrong: apart from the rest of the student's room, because a phone in the booth loads
 * them first.
 */
export const logForm = messages({
  en: {
    polarity: 'Polarity', amps: 'Current', volts: 'Voltage', wireFeed: 'Wire feed', stickOut: 'Tip to work', settings: 'What you ran',
    pass: 'Pass {n}', addPass: 'Add a pass', removePass: 'Remove pass {n}', gasUsed: 'Gas', arcTime: 'Arc time', weldedLength: 'Length welded',
    photo: 'Photo', photoHint: 'JPEG, PNG or WebP, up to 15 MB. Only the coupon: no faces.',
    photoWrong: 'Not a JPEG, PNG or WebP picture up to 15 MB. Choose another.', removePhoto: 'Remove the photo',
    note: 'Note to yourself and your instructor', send: 'Send the coupon', sending: 'Sending', notSent: 'Not sent yet',
    fix: 'Some of this needs another look:',
    noConnection: 'No connection just now. What you typed is kept on this device; send it when the connection is back.', kept: 'Kept on this device',
    restored: 'This is what you had typed before. It was kept on this device.', discard: 'Start over',
    failed: 'Signing in did not work. Check the connection and try again.',
  },
  es: {
    polarity: 'Polaridad', amps: 'Corriente', volts: 'Voltaje', wireFeed: 'Velocidad de alambre', stickOut: 'Punta al trabajo',
    settings: 'Con qué soldaste', pass: 'Pasada {n}', addPass: 'Agregar una pasada', removePass: 'Quitar la pasada {n}', gasUsed: 'Gas',
    arcTime: 'Tiempo de arco', weldedLength: 'Largo soldado', photo: 'Foto', photoHint: 'JPEG, PNG o WebP, hasta 15 MB. Solo la probeta: sin caras.',
    photoWrong: 'No es una imagen JPEG, PNG o WebP de hasta 15 MB. Elige otra.',
    removePhoto: 'Quitar la foto', note: 'Nota para ti y tu instructor', send: 'Enviar la probeta', sending: 'Enviando', notSent: 'Sin enviar',
    fix: 'Algo de esto necesita otra mirada:',
    noConnection: 'No hay conexión en este momento. Lo que escribiste queda guardado en este aparato; envíalo cuando vuelva.',
    kept: 'Guardado en este aparato', restored: 'Esto es lo que ya habías escrito. Quedó guardado en este aparato.', discard: 'Empezar de nuevo',
    failed: 'No se pudo entrar. Revisa la conexión e inténtalo de nuevo.',
  },
})
