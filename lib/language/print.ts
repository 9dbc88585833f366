import { messages } from './say'

/** What is printed on paper. */
export const print = messages({
  en: {
    forPaper: 'This page is made for paper: print it from your browser.', paperNow: 'Laid out for {paper}.', otherPaper: 'Lay it out for {paper}', letter: 'Letter', a4: 'A4',
    printed: 'Printed {date}.', underArc: '{time} under the arc', noArcTime: 'arc time not recorded', hours: '{h} h {m} min', minutes: '{m} min', coupons: 'Coupons', fromTo: '{from} to {to}',
    criteriaLine: 'Criteria: {criteria}.', scoringLine: 'Scoring version {scoring}.', modelLine: 'Readiness model: {model}.', criteriaVersion: '{title}, version {version}',
    fromMemory: '* Some limits in it are from memory and were not read again in the standard.', noModel: 'none used yet',

    summary: 'Progress summary, practice record', noCoupons: 'No coupons logged yet.',
    testIn: 'A test is worth booking in {n} of {of} exercises (bold in the table).', testInNone: 'No exercise is at the point where a test is suggested yet.', testSuggested: 'test suggested',
    exercise: 'Exercise', couponsCol: 'Coupons', lastTenCol: 'Accepted of last ten', markCol: 'Median mark', chanceCol: 'Chance of passing', agreesCol: 'Self agrees with instructor',
    of: '{a} of {b}', notLooked: 'none yet', notEnough: 'not enough yet, {have} of {need}', noneCompared: 'none yet', chance: '{chance} ({low} to {high})',
    tableNote: 'Accepted and mark: the instructor’s inspections. Chance: of passing the next test coupon, {level} % limits, as of {date}.', leftOut: 'Earlier exercises left out for room: {n}, with {coupons} coupons.',
    otherClasses: '{n} coupons from classes not shown here count in the chances and totals, and nowhere else on this page.',
    stripsEvery: 'Every coupon, oldest first', stripsSome: 'One coupon in {k}, oldest first', stripsNone: 'No coupon of this exercise has been inspected.', ownLook: 'own look', ownLookOne: 'One of these is the student’s own look: no instructor has inspected it yet.', ownLooks: '{n} of these are the student’s own look: no instructor has inspected them yet.',
    trackTitle: 'Chance of passing the next test coupon', marksTitle: 'Marks over time',
    defects: 'Most frequent defects', defect: 'Defect', first: 'First {n}', last: 'Last {n}', defectsFew: 'Fewer than four inspected coupons: too few to set early against late.', defectsNone: 'Nothing was rejected in them.',
    tests: 'Tests taken', testLine: '{title}, {date}: {result}', passed: 'passed', failed: 'not passed', noTests: 'No test taken yet.', testsMore: 'and {n} earlier, {passed} of them passed',

    report: 'Readiness for test', practiceRecord: 'practice record', chanceWord: 'chance', threshold: 'Threshold of this program', minimum: 'Coupons an estimate takes', interval: 'Limits, {level} %', couponsUsed: 'Coupons used', left: 'Coupons left out',
    leftWhy: '{notInspected} not inspected, {incomplete} incomplete, {self} only by the student', model: 'Model', correction: 'Program’s correction', correctionNone: 'none: no test results with a forecast', correctionUsed: 'from {n} test results; {chance} without it',
    whatItSays: 'The estimate', weld: 'The weld', whatHolds: 'What holds it back, and what would tell more', adviceWord: 'Advice', whyWide: 'Why the limits are this wide: {why}.',
    notMeasured: 'What was not measured', allMeasured: 'Every rule was judged on every coupon used.', ruleNotMeasured: '{rule}: on {n} of {of} coupons', verdictOnly: '{n} of {of} coupons count by their verdict alone, because something was not measured.',
    evidence: 'Coupons used', number: 'No.', date: 'Date', by: 'Inspected by', verdict: 'Verdict', closest: 'Closest rule', margin: 'Margin', scaled: 'Over its scale', yesNo: 'Yes/no rules', allGood: 'all met', notAll: 'not all met',
    byInstructor: 'instructor', bySecond: 'second reader', bySelf: 'student, weight {weight}', verdictAlone: 'verdict alone',
    scaledNote: 'The margin over a scale kept with the criteria; above 0 is inside. The model reads the smallest one of each coupon.',
    cautions: 'Cautions', itAdvises: 'This is an estimate from practice coupons. It advises; the instructor decides whether and when to test. Nobody is ranked by it.', signInstructor: 'Instructor', signStudent: 'Student', signDate: 'Date',
    previousTests: 'Tests of this exercise', noPrevious: 'No test of this exercise has been recorded.',

    boothCard: 'Booth card', cardVersion: 'Exercise version {version}. Cautions of {cautions}.', defer: 'Your instructor, the machine’s and the wire’s own sheets and the local rules come first.',
  },
  es: {
    forPaper: 'Esta página está hecha para papel: imprímela desde tu navegador.', paperNow: 'Compuesta para {paper}.', otherPaper: 'Componerla para {paper}', letter: 'Carta', a4: 'A4',
    printed: 'Impreso el {date}.', underArc: '{time} bajo el arco', noArcTime: 'tiempo de arco sin registrar', hours: '{h} h {m} min', minutes: '{m} min', coupons: 'Probetas', fromTo: '{from} a {to}',
    criteriaLine: 'Criterios: {criteria}.', scoringLine: 'Versión de evaluación {scoring}.', modelLine: 'Modelo de preparación: {model}.', criteriaVersion: '{title}, versión {version}',
    fromMemory: '* Algunos de sus límites son de memoria y no se volvieron a leer en la norma.', noModel: 'ninguno usado todavía',

    summary: 'Resumen de avance, registro de práctica', noCoupons: 'Todavía no hay probetas registradas.',
    testIn: 'Vale la pena programar una prueba en {n} de {of} ejercicios (en negrita en la tabla).', testInNone: 'Ningún ejercicio está todavía en el punto en que se sugiere una prueba.', testSuggested: 'prueba sugerida',
    exercise: 'Ejercicio', couponsCol: 'Probetas', lastTenCol: 'Aceptadas, últimas diez', markCol: 'Nota mediana', chanceCol: 'Probabilidad de pasar', agreesCol: 'Coincide con el instructor',
    of: '{a} de {b}', notLooked: 'ninguna aún', notEnough: 'aún no alcanza, {have} de {need}', noneCompared: 'ninguna aún', chance: '{chance} ({low} a {high})',
    tableNote: 'Aceptadas y nota: inspecciones del instructor. Probabilidad: de pasar la próxima probeta de prueba, límites del {level} %, al {date}.', leftOut: 'Ejercicios anteriores omitidos por espacio: {n}, con {coupons} probetas.',
    otherClasses: '{n} probetas de clases que aquí no se muestran cuentan en las probabilidades y los totales, y en nada más de esta página.',
    stripsEvery: 'Cada probeta, de vieja a nueva', stripsSome: 'Una de cada {k}, de vieja a nueva', stripsNone: 'No se ha inspeccionado ninguna probeta de este ejercicio.', ownLook: 'propia', ownLookOne: 'Una de ellas es la mirada del propio estudiante: ningún instructor la ha inspeccionado todavía.', ownLooks: '{n} de ellas son la mirada del propio estudiante: ningún instructor las ha inspeccionado todavía.',
    trackTitle: 'Probabilidad de pasar la próxima probeta de prueba', marksTitle: 'Notas en el tiempo',
    defects: 'Defectos más frecuentes', defect: 'Defecto', first: 'Primeras {n}', last: 'Últimas {n}', defectsFew: 'Menos de cuatro probetas inspeccionadas: muy pocas para comparar las primeras con las últimas.', defectsNone: 'No se rechazó nada en ellas.',
    tests: 'Pruebas hechas', testLine: '{title}, {date}: {result}', passed: 'aprobado', failed: 'no aprobado', noTests: 'Todavía no hay pruebas.', testsMore: 'y {n} anteriores, {passed} aprobados',

    report: 'Preparación para la prueba de calificación', practiceRecord: 'registro de práctica', chanceWord: 'probabilidad', threshold: 'Umbral de este programa', minimum: 'Probetas que necesita una estimación', interval: 'Límites del {level} %', couponsUsed: 'Probetas usadas', left: 'Probetas omitidas',
    leftWhy: '{notInspected} sin inspeccionar, {incomplete} incompletas, {self} solo por el estudiante', model: 'Modelo', correction: 'Corrección del programa', correctionNone: 'ninguna: no hay resultados de prueba con pronóstico', correctionUsed: 'según {n} resultados de prueba; {chance} sin ella',
    whatItSays: 'La estimación', weld: 'La soldadura', whatHolds: 'Qué la frena y qué diría más', adviceWord: 'Consejo', whyWide: 'Por qué los límites son así de amplios: {why}.',
    notMeasured: 'Lo que no se midió', allMeasured: 'Todas las reglas se juzgaron en todas las probetas usadas.', ruleNotMeasured: '{rule}: en {n} de {of} probetas', verdictOnly: '{n} de {of} probetas cuentan solo por su veredicto, porque algo no se midió.',
    evidence: 'Probetas usadas', number: 'N.º', date: 'Fecha', by: 'Inspeccionó', verdict: 'Veredicto', closest: 'Regla más justa', margin: 'Margen', scaled: 'Sobre su escala', yesNo: 'Reglas de sí o no', allGood: 'todas cumplidas', notAll: 'no todas cumplidas',
    byInstructor: 'instructor', bySecond: 'segundo inspector', bySelf: 'estudiante, peso {weight}', verdictAlone: 'solo el veredicto',
    scaledNote: 'El margen sobre una escala guardada con los criterios; arriba de 0 está dentro. El modelo lee el menor de cada probeta.',
    cautions: 'Precauciones', itAdvises: 'Es una estimación a partir de probetas de práctica. Aconseja; el instructor decide si hacer la prueba y cuándo. A nadie se le clasifica con esto.', signInstructor: 'Instructor', signStudent: 'Estudiante', signDate: 'Fecha',
    previousTests: 'Pruebas de este ejercicio', noPrevious: 'No hay ninguna prueba de este ejercicio registrada.',

    boothCard: 'Tarjeta de la cabina', cardVersion: 'Versión {version} del ejercicio. Precauciones de {cautions}.', defer: 'Primero van tu instructor, las hojas de la máquina y del alambre y las reglas locales.',
  },
})
