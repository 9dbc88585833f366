import { messages } from './say'

/** What a set-up found at the machine differs in, and what that does to the weld: shop knowledge, shown as common practice without a source. */
export const setUpWhy = messages({
  en: {
    cardSource: 'Booth card of the exercise',
    polarityOffCard: 'Polarity is set to {set}; the booth card says {card}.', gasOffCard: 'The gas set is {set}; the booth card says {card}.',
    'wire-size': 'The machine holds {set}; this exercise is for {right}.', 'wire-size-why': 'Current, wire feed and bead size on the booth card are for that size.',
    'roll-size': 'The drive rolls are for {set}; the wire is {right}.', 'roll-size-why': 'A groove too large slips and one too small shaves the wire: the arc stutters either way.',
    'roll-groove-cored': 'Smooth rolls are set; cored wire is commonly driven by knurled rolls.', 'roll-groove-cored-why': 'A cored wire is a tube. Smooth rolls that grip it hard enough flatten it.',
    'roll-groove-solid': 'Knurled rolls are set; solid wire is commonly driven by smooth V rolls.', 'roll-groove-solid-why': 'Knurls cut chips off a solid wire, and the chips clog the liner.',
    'position-set': 'The coupon is set in {set}; this exercise is welded in {right}.', 'position-set-why': 'A coupon in another position says nothing about this one.',
    'why-polarity': 'On the wrong polarity the arc is harsh, it spatters, and it melts too little or too much of the plate.',
    'why-gas': 'Air reaches the puddle: pores inside and on the face.', 'why-no-gas': 'This wire makes its own gas as it burns. More gas changes the arc it was made for.',
    'why-stick-out': 'Longer stick-out takes current out of the arc and makes the bead cold and tall; shorter puts more in and, on self-shielded wire, leaves too little room to make its gas.',
    'why-volts': 'Voltage sets the arc’s length: too much gives a flat, wide bead with undercut and pores, too little a tall, ropy one.',
    'why-feed': 'Wire feed and current go together: more gives more metal and more melting, less gives less of both.',
    'why-position': 'The slag and metal of this wire were made for other positions: they run out of the joint here.',
    'why-plate': 'The weld metal may be too hard or too brittle on thicker plate.',
  },
  es: {
    cardSource: 'Tarjeta de cabina del ejercicio',
    polarityOffCard: 'La polaridad está en {set}; la tarjeta de cabina dice {card}.', gasOffCard: 'El gas puesto es {set}; la tarjeta de cabina dice {card}.',
    'wire-size': 'La máquina tiene {set}; este ejercicio es para {right}.', 'wire-size-why': 'La corriente, la alimentación y el tamaño del cordón de la tarjeta son para esa medida.',
    'roll-size': 'Los rodillos son para {set}; el alambre es de {right}.', 'roll-size-why': 'Una ranura grande patina y una chica raspa el alambre: en los dos casos el arco tartamudea.',
    'roll-groove-cored': 'Hay rodillos lisos; el alambre tubular suele moverse con rodillos moleteados.', 'roll-groove-cored-why': 'El alambre tubular es un tubo. Los rodillos lisos que lo agarran bien lo aplastan.',
    'roll-groove-solid': 'Hay rodillos moleteados; el alambre sólido suele moverse con rodillos lisos en V.', 'roll-groove-solid-why': 'El moleteado le saca viruta al alambre sólido, y la viruta tapa la guía.',
    'position-set': 'La probeta está puesta en {set}; este ejercicio se suelda en {right}.', 'position-set-why': 'Una probeta en otra posición no dice nada de esta.',
    'why-polarity': 'Con la polaridad equivocada el arco es áspero, salpica y funde muy poco o demasiado de la placa.',
    'why-gas': 'El aire llega al charco: poros por dentro y en la cara.', 'why-no-gas': 'Este alambre hace su propio gas al quemarse. Más gas cambia el arco para el que se hizo.',
    'why-stick-out': 'Una extensión más larga le quita corriente al arco y deja un cordón frío y alto; una más corta le da más y, con alambre autoprotegido, no deja espacio para formar su gas.',
    'why-volts': 'El voltaje da el largo del arco: de más deja un cordón plano y ancho con socavado y poros; de menos, uno alto y abultado.',
    'why-feed': 'La alimentación y la corriente van juntas: más da más metal y más fusión; menos da menos de las dos.',
    'why-position': 'La escoria y el metal de este alambre son para otras posiciones: aquí se escurren de la junta.',
    'why-plate': 'El metal de soldadura puede quedar muy duro o frágil en placa más gruesa.',
  },
})
