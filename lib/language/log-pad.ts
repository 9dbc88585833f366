import { messages } from './say'

/** Sizes by taps, the arc timer, the set-up check and the last look before sending. */
export const logPad = messages({
  en: {
    hint: 'Tap what the gauge says, or type it: 5/16, .312 or 8 mm. What you did not measure stays empty.',
    sizeAt: '{size}, station {n}', padFor: 'Gauge steps for: {size}', from: '{at} from the start', count: '{filled} of {of}', allDone: 'Every size is measured', allDoneText: 'Tap a box to change it.',
    bandHint: 'Keys with a bar are inside the limit.', inside: 'inside the limit', smaller: 'Smaller', larger: 'Larger', clear: 'Clear', same: 'Same as station {n}: {size}',
    typeInstead: 'Type it', padInstead: 'Use the pad', typeThis: 'Type this one.',
    change: 'Change the settings', noneWritten: 'Nothing written down yet', fromCard: 'Polarity and gas are from the booth card, nothing else is filled in. Write down what you set.',
    fromLast: 'Filled in from your last coupon. Change what was different.', strike: 'Arc on', stop: 'Arc off', timerName: 'Arc timer, pass {n}', burning: 'Arc on for {time}', arcs: '{n} arcs, {time} in all', oneArc: '1 arc, {time}',
    leftRunning: 'The timer has run for {time}. Was it left running?', keepArc: 'No, the arc burned that long', dropArc: 'Yes, leave that time out', clockMoved: 'The clock of this device was set back while the timer ran, so this arc’s time is not known. Type the arc time instead.',
    dropUnknown: 'Stop the timer', notTime: 'The arc time box holds something that is not a time. Mend it, then stop the timer.', wholeLength: 'The whole weld, {length}',
    before: 'Before the arc', beforeHint: 'Check the machine against the booth card. Nothing here keeps you from welding.', setUpAgrees: 'What is written down agrees with the booth card and the wire or rod.', setUpLooks: '{n} things to look at before you strike the arc', setUpLook: 'One thing to look at before you strike the arc',
    wrong: 'Wrong', caution: 'Look again', checkMachine: 'Check wire, rolls and position', closeMachine: 'Close',
    review: 'Before you send', reviewSizes: '{filled} of {of} sizes measured', reviewMissing: 'Not measured: {sizes}.', missingAt: '{size} at {stations}', reviewSeen: '{n} indications', reviewSeenOne: '1 indication', reviewSeenNone: 'no indications',
    reviewLooked: 'looked for {n} of {of} kinds', reviewPasses: '{n} passes', reviewPassesOne: '1 pass', reviewRunning: 'An arc timer is still running. Stop it before you send.', reviewIncomplete: 'What is not measured cannot be accepted: the coupon will read “incomplete”.',
  },
  es: {
    hint: 'Toca lo que marca el calibrador, o escríbelo: 5/16, .312 u 8 mm. Lo que no mediste queda vacío.',
    sizeAt: '{size}, estación {n}', padFor: 'Pasos del calibrador para: {size}', from: 'a {at} del inicio', count: '{filled} de {of}', allDone: 'Todo está medido', allDoneText: 'Toca una casilla para cambiarla.',
    bandHint: 'Las teclas con barra están dentro del límite.', inside: 'dentro del límite', smaller: 'Menores', larger: 'Mayores', clear: 'Borrar', same: 'Igual que la estación {n}: {size}',
    typeInstead: 'Escribir', padInstead: 'Usar las teclas', typeThis: 'Esta se escribe.',
    change: 'Cambiar los ajustes', noneWritten: 'Todavía no hay nada anotado', fromCard: 'La polaridad y el gas vienen de la tarjeta de cabina; lo demás está vacío. Anota lo que pusiste.',
    fromLast: 'Viene de tu última probeta. Cambia lo que fue distinto.', strike: 'Arco encendido', stop: 'Arco apagado', timerName: 'Reloj de arco, pasada {n}', burning: 'Arco encendido desde hace {time}', arcs: '{n} arcos, {time} en total', oneArc: '1 arco, {time}',
    leftRunning: 'El reloj lleva {time}. ¿Se quedó corriendo?', keepArc: 'No, el arco duró eso', dropArc: 'Sí, no cuentes ese tiempo', clockMoved: 'El reloj de este aparato se atrasó mientras corría, así que no se sabe cuánto duró este arco. Escribe el tiempo de arco.',
    dropUnknown: 'Parar el reloj', notTime: 'La casilla del tiempo de arco tiene algo que no es un tiempo. Corrígela y luego para el reloj.', wholeLength: 'Toda la soldadura, {length}',
    before: 'Antes del arco', beforeHint: 'Compara la máquina con la tarjeta de cabina. Nada de esto te impide soldar.', setUpAgrees: 'Lo anotado va de acuerdo con la tarjeta de cabina y con el alambre o electrodo.', setUpLooks: '{n} cosas que revisar antes de encender el arco', setUpLook: 'Una cosa que revisar antes de encender el arco',
    wrong: 'Mal', caution: 'Revisa', checkMachine: 'Revisar alambre, rodillos y posición', closeMachine: 'Cerrar',
    review: 'Antes de enviar', reviewSizes: '{filled} de {of} medidas tomadas', reviewMissing: 'Sin medir: {sizes}.', missingAt: '{size} en {stations}', reviewSeen: '{n} indicaciones', reviewSeenOne: '1 indicación', reviewSeenNone: 'ninguna indicación',
    reviewLooked: 'buscaste {n} de {of} tipos', reviewPasses: '{n} pasadas', reviewPassesOne: '1 pasada', reviewRunning: 'Un reloj de arco sigue corriendo. Páralo antes de enviar.', reviewIncomplete: 'Lo que no se mide no se puede aceptar: la probeta saldrá “incompleta”.',
  },
})
