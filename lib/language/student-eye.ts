import { messages } from './say'

/** How well a student sees their own welds, told to their staff. The student reads the same of themselves in my-progress. */
export const studentEye = messages({
  en: {
    eyeTitle: 'How the student sees their own welds',
    eyeAgree: 'The student and the instructor reached the same verdict on {agreed} of {compared} coupons ({share}, between {low} and {high}).',
    eyeKind: 'Where they differed, the student mostly accepted what the instructor rejected.', eyeStrict: 'Where they differed, the student mostly rejected what the instructor accepted.',
    eyeBoth: 'Where they differed, the student was as often too kind as too strict.',
    eyeNotYet: 'Not enough yet: student and instructor have both judged {compared} of the {least} coupons it takes.',
    widthOver: 'The student’s widths read {off} larger than the instructor’s on average (between {low} and {high} larger).', widthUnder: 'The student’s widths read {off} smaller than the instructor’s on average (between {low} and {high} smaller).',
    widthEven: 'The student’s widths and the instructor’s do not differ clearly: {off} on average, between {low} and {high}.', widthNotYet: 'Widths cannot be compared yet: both measured them on {n} of the {least} coupons it takes.',
    eyeDrawing: 'Each point is a coupon, oldest at the left: how much larger (above) or smaller (below) the student’s widths read than the instructor’s. Disc: same verdict. Square: different verdicts. Ring: one of the two was not done.', eyeLarger: 'larger', eyeSmaller: 'smaller',
  },
  es: {
    eyeTitle: 'Cómo ve el estudiante sus propias soldaduras',
    eyeAgree: 'El estudiante y el instructor llegaron al mismo veredicto en {agreed} de {compared} probetas ({share}, entre {low} y {high}).',
    eyeKind: 'Donde difirieron, el estudiante casi siempre aceptó lo que el instructor rechazó.', eyeStrict: 'Donde difirieron, el estudiante casi siempre rechazó lo que el instructor aceptó.',
    eyeBoth: 'Donde difirieron, al estudiante tantas veces le faltó rigor como le sobró.',
    eyeNotYet: 'Todavía no alcanza: estudiante e instructor han evaluado {compared} de las {least} probetas necesarias.',
    widthOver: 'Los anchos del estudiante salen en promedio {off} más grandes que los del instructor (entre {low} y {high} más).', widthUnder: 'Los anchos del estudiante salen en promedio {off} más chicos que los del instructor (entre {low} y {high} menos).',
    widthEven: 'Los anchos del estudiante y los del instructor no difieren con claridad: {off} en promedio, entre {low} y {high}.', widthNotYet: 'Los anchos todavía no se pueden comparar: los dos los midieron en {n} de las {least} probetas necesarias.',
    eyeDrawing: 'Cada punto es una probeta, la más vieja a la izquierda: cuánto más grandes (arriba) o más chicos (abajo) salen los anchos del estudiante que los del instructor. Disco: mismo veredicto. Cuadro: veredictos distintos. Anillo: a uno de los dos le faltó.', eyeLarger: 'más grandes', eyeSmaller: 'más chicos',
  },
})
