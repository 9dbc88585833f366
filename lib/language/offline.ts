import { messages } from './say'

/** Working without a connection: what waits on the device, and what the app says when a page cannot come. */
export const offline = messages({
  en: {
    waitingTitle: 'Waiting to be sent', waitingLead: 'Coupons you logged that are still on this device only. They send themselves when there is a connection, oldest first, each one once.',
    noneWaiting: 'Nothing is waiting', noneWaitingText: 'Every coupon logged on this device has been sent.', toPractice: 'To my practice',
    sendNow: 'Send now', sendingNow: 'Sending', lastTryFailed: 'The last try did not get through. It is tried again by itself.',
    photoOnly: 'Number {number} is logged; its photo is still to be sent.',
    stateWaiting: 'Waits', stateRefused: 'Not taken', stateReopened: 'Open in its form',
    reopenedText: 'You took this back to correct it. It is sent again from its form; its photo stays with it.', photoRefused: 'Number {number} is logged, but its photo was not taken.',
    correct: 'Correct it in the form', sendAgain: 'Send it again as it is', throwAway: 'Throw it away', throwAwaySure: 'Throw it away for good', throwAwayHint: 'Pressed once more, this coupon is gone from this device and nobody has it.',
    throwPhotoAway: 'Let the photo go', throwPhotoSure: 'Let the photo go for good', throwPhotoHint: 'Pressed once more, the photo is gone from this device. The coupon stays logged.',
    failedTooOften: 'The server failed on this coupon several times. Tell your instructor, and send it again later.', newer: 'This coupon was logged with a newer version of the app than the server runs. It stays on this device; send it again later.',
    otherPerson: 'This was logged by someone else on this device. It waits for them to sign in.', photoWaits: 'The coupon is logged. Its photo waits on this device and sends itself.',
    offlineTitle: 'No connection', offlineText: 'This page is not kept on this device, and there is no connection to fetch it.',
    worksTitle: 'This works without a connection', works: 'Your exercises and booth cards, and logging a coupon of an exercise you opened before. What you log is kept here and sends itself later.',
    notTitle: 'This needs a connection', not: 'Signing in, results, photos already sent, messages and prints.',
    signOutTitle: 'Not signed out yet', signOutText: 'There is no connection, so the server still counts you as signed in. The copies of your pages are gone from this device. What you logged and did not send yet stays here and is sent once you are signed in again. When the connection is back, this device signs you out before it opens anything.',
  },
  es: {
    waitingTitle: 'Por enviar', waitingLead: 'Probetas que registraste y que todavía están solo en este dispositivo. Se envían solas cuando hay conexión, primero la más antigua, cada una una sola vez.',
    noneWaiting: 'No hay nada por enviar', noneWaitingText: 'Ya se enviaron todas las probetas registradas en este dispositivo.', toPractice: 'Ir a mi práctica',
    sendNow: 'Enviar ahora', sendingNow: 'Enviando', lastTryFailed: 'El último intento no llegó. Se intenta otra vez sin que hagas nada.',
    photoOnly: 'La número {number} ya está registrada; falta enviar su foto.',
    stateWaiting: 'Espera', stateRefused: 'No aceptada', stateReopened: 'Abierta en su formulario',
    reopenedText: 'La tomaste de vuelta para corregirla. Se envía otra vez desde su formulario; su foto sigue con ella.', photoRefused: 'La número {number} ya está registrada, pero no se aceptó su foto.',
    correct: 'Corregirla en el formulario', sendAgain: 'Enviarla otra vez como está', throwAway: 'Descartarla', throwAwaySure: 'Descartarla para siempre', throwAwayHint: 'Si pulsas otra vez, esta probeta desaparece de este dispositivo y nadie más la tiene.',
    throwPhotoAway: 'Dejar la foto', throwPhotoSure: 'Dejar la foto para siempre', throwPhotoHint: 'Si pulsas otra vez, la foto desaparece de este dispositivo. La probeta sigue registrada.',
    failedTooOften: 'El servidor falló varias veces con esta probeta. Avisa a tu instructor y envíala otra vez más tarde.', newer: 'Esta probeta se registró con una versión de la aplicación más nueva que la del servidor. Se queda en este dispositivo; envíala otra vez más tarde.',
    otherPerson: 'Esto lo registró otra persona en este dispositivo. Espera a que esa persona entre.', photoWaits: 'La probeta está registrada. Su foto espera en este dispositivo y se envía sola.',
    offlineTitle: 'Sin conexión', offlineText: 'Esta página no está guardada en este dispositivo y no hay conexión para traerla.',
    worksTitle: 'Esto funciona sin conexión', works: 'Tus ejercicios y tarjetas de cabina, y registrar una probeta de un ejercicio que ya abriste. Lo que registres se guarda aquí y se envía solo después.',
    notTitle: 'Esto necesita conexión', not: 'Entrar, los resultados, las fotos ya enviadas, los mensajes y las impresiones.',
    signOutTitle: 'Tu sesión sigue abierta', signOutText: 'No hay conexión, así que para el servidor tu sesión sigue abierta. Las copias de tus páginas ya no están en este dispositivo. Lo que registraste y aún no se envió se queda aquí y se envía cuando entres de nuevo. Cuando vuelva la conexión, este dispositivo cierra tu sesión antes de abrir cualquier cosa.',
  },
})
