import { messages } from './say'

/** Readiness in words: the estimate, the advice, its reasons, what holds it back, why its limits are wide. */
export const readiness = messages({
  en: {
    estimate: '{chance} chance to pass the next test coupon, between {low} and {high}, from {coupons} coupons.',
    notEnough: 'Not enough yet: {have} of {need} coupons judged.',
    oneMore: 'One more judged coupon gives an estimate.',
    someMore: '{more} more judged coupons give an estimate.',

    'advice-practise': 'Keep practising',
    'advice-close': 'Nearly there',
    'advice-test': 'A test is worth booking',
    'advice-stale': 'Weld again first',
    'instructor-decides': 'The instructor decides.',

    'chance-at-threshold': 'The chance has reached the {threshold} this program asks for.',
    'chance-kept': 'The chance is a little under {threshold}, not enough to take back the suggestion.',
    'chance-close': 'The chance is within 0.10 of the {threshold} this program asks for.',
    'chance-below': 'The chance is more than 0.10 below the {threshold} this program asks for.',
    'no-pass-in-last-three': 'None of the last three coupons passed.',
    'blocking-open': 'A crack or a fusion fault is still open. See it mended on a new coupon first.',
    'failed-test-needs-coupons': 'After a failed test, weld four further coupons before the next.',
    'gap-since-last-coupon': 'The last coupon is too long ago for the estimate to hold.',
    'verdicts-only': 'No coupon was measured in full, so only passes and fails count.',
    'few-test-results': 'This program has fewer than 100 test results to check its estimates against, so the limits are the wider, 95 % ones.',

    holdsBack: 'What holds it back most is {rule}: had it passed on every coupon, the chance would be {chance}.',
    nothingHoldsBack: 'No single rule holds it back.',
    afterMore: '{count} more coupons like the last three would make it {chance}, between {low} and {high}.',

    wide: 'The limits are wide because:',
    'wide-few-coupons': 'there are few coupons; five more like the last three would bring the limits {points} closer',
    'wide-gap': 'the last coupon is some days ago; welded today, the limits would be {points} closer',
    'wide-scattered-margins': 'margins jump from coupon to coupon; steady ones would bring the limits {points} closer',
    'wide-few-test-results': 'the program has few test results; with 100 the limits would be {points} closer',
    'wide-readers-differ': 'two inspectors reached different verdicts on {count} of the {of} coupons both of them read',
    'wide-verdicts-only': '{count} of {of} coupons were not measured in full, and a verdict alone tells less',

    selfCounts: 'Coupons only the student inspected count with weight {weight}: {agreed} of {compared} own verdicts agreed with the instructor.',
    selfNotYet: 'Coupons only the student inspected do not count yet: {compared} of the {minimum} coupons it takes were judged by both.',
    selfNoBetter: 'Coupons only the student inspected do not count: {agreed} of {compared} own verdicts agreed with the instructor, no more than a coin would.',
    ownCounts: 'Coupons that only you inspected count with weight {weight}: {agreed} of {compared} of your verdicts agreed with your instructor’s.',
    ownNotYet: 'Coupons that only you inspected do not count yet: you and your instructor have both judged {compared} of the {minimum} coupons it takes.',
    ownNoBetter: 'Coupons that only you inspected do not count: {agreed} of {compared} of your verdicts agreed with your instructor’s, no more than a coin would.',
  },
  es: {
    estimate: 'Probabilidad de {chance} de pasar la próxima probeta de prueba, entre {low} y {high}, según {coupons} probetas.',
    notEnough: 'Todavía no alcanza: {have} de {need} probetas evaluadas.',
    oneMore: 'Con una probeta evaluada más habrá una estimación.',
    someMore: 'Con {more} probetas evaluadas más habrá una estimación.',

    'advice-practise': 'Sigue practicando',
    'advice-close': 'Ya falta poco',
    'advice-test': 'Vale la pena programar la prueba',
    'advice-stale': 'Primero vuelve a soldar',
    'instructor-decides': 'Decide el instructor.',

    'chance-at-threshold': 'La probabilidad llegó al {threshold} que pide este programa.',
    'chance-kept': 'La probabilidad está un poco por debajo de {threshold}; no basta para retirar la sugerencia.',
    'chance-close': 'La probabilidad está a menos de 0.10 del {threshold} que pide este programa.',
    'chance-below': 'La probabilidad está más de 0.10 por debajo del {threshold} que pide este programa.',
    'no-pass-in-last-three': 'Ninguna de las últimas tres probetas pasó.',
    'blocking-open': 'Sigue pendiente una grieta o una falta de fusión. Antes hay que verla corregida en otra probeta.',
    'failed-test-needs-coupons': 'Después de una prueba no aprobada, suelda cuatro probetas más antes del siguiente.',
    'gap-since-last-coupon': 'La última probeta es demasiado antigua para que la estimación valga.',
    'verdicts-only': 'Ninguna probeta se midió por completo, así que solo cuentan los aprobados y los rechazos.',
    'few-test-results': 'Este programa tiene menos de 100 resultados de prueba con que comprobar sus estimaciones; por eso los límites son los más amplios, los del 95 %.',

    holdsBack: 'Lo que más la frena es {rule}: si hubiera pasado en todas las probetas, la probabilidad sería {chance}.',
    nothingHoldsBack: 'Ninguna regla por sí sola la frena.',
    afterMore: 'Con {count} probetas más como las últimas tres sería {chance}, entre {low} y {high}.',

    wide: 'Los límites son amplios porque:',
    'wide-few-coupons': 'hay pocas probetas; cinco más como las últimas tres acercarían los límites {points}',
    'wide-gap': 'la última probeta es de hace días; si fuera de hoy, los límites estarían {points} más cerca',
    'wide-scattered-margins': 'los márgenes saltan de una probeta a otra; con márgenes parejos los límites estarían {points} más cerca',
    'wide-few-test-results': 'el programa tiene pocos resultados de prueba; con 100 los límites estarían {points} más cerca',
    'wide-readers-differ': 'dos inspectores dieron veredictos distintos en {count} de las {of} probetas que ambos revisaron',
    'wide-verdicts-only': '{count} de {of} probetas no se midieron por completo, y un veredicto solo dice menos',

    selfCounts: 'Las probetas que solo inspeccionó el estudiante cuentan con peso {weight}: {agreed} de {compared} veredictos propios coincidieron con el instructor.',
    selfNotYet: 'Las probetas que solo inspeccionó el estudiante todavía no cuentan: ambos han evaluado {compared} de las {minimum} probetas necesarias.',
    selfNoBetter: 'Las probetas que solo inspeccionó el estudiante no cuentan: {agreed} de {compared} veredictos propios coincidieron con el instructor, no más que al azar.',
    ownCounts: 'Las probetas que solo inspeccionaste tú cuentan con peso {weight}: {agreed} de {compared} de tus veredictos coincidieron con los de tu instructor.',
    ownNotYet: 'Las probetas que solo inspeccionaste tú todavía no cuentan: tú y tu instructor han evaluado {compared} de las {minimum} probetas necesarias.',
    ownNoBetter: 'Las probetas que solo inspeccionaste tú no cuentan: {agreed} de {compared} de tus veredictos coincidieron con los de tu instructor, no más que al azar.',
  },
})
