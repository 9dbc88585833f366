import {
  as, classAddress, classCode, DESK, expect, expectGoodScreen, fillJoinForm, inventPerson, newcomer, PEOPLE, PHONE, readCode, signIn, signOut, stranger, TABLET, test,
} from './app'

test('signing in: what is wrong is said, what was typed stays, and the way leads back to where one was going', async ({ browser }) => {
  const page = await stranger(browser)
  await page.goto('/account')
  await expect(page).toHaveURL(/\/sign-in\?back=%2Faccount/)
  await expectGoodScreen(page, { gloves: true })
  await signIn(page, { ...PEOPLE.jimena, password: 'not her password at all' })
  await expect(page.getByRole('alert').filter({ hasText: 'Not signed in' })).toContainText('The name or the password is not right.')
  await expect(page.getByLabel('Sign-in name')).toHaveValue(PEOPLE.jimena.signInName)
  await expectGoodScreen(page, { gloves: true })

  // A name nobody has is answered in the same words.
  await signIn(page, { ...PEOPLE.jimena, signInName: 'n.obody' })
  await expect(page.getByRole('alert').filter({ hasText: 'Not signed in' })).toContainText('The name or the password is not right.')

  await page.getByRole('button', { name: 'Show' }).click()
  await expect(page.getByLabel('Password', { exact: true })).toHaveAttribute('type', 'text')
  await signIn(page, { ...PEOPLE.jimena, signInName: ` ${PEOPLE.jimena.signInName.toUpperCase()} ` }) // as a phone's keyboard writes it
  await expect(page).toHaveURL(/\/account$/)
  await expectGoodScreen(page, { gloves: true })
  await signOut(page)
  await page.waitForURL('**/sign-in')
  await page.goto('/learn')
  await expect(page).toHaveURL(/\/sign-in\?back=%2Flearn/)
})

test('the way back never leads off this site', async ({ browser }) => {
  const page = await stranger(browser)
  await page.goto('/sign-in?back=https://elsewhere.example/')
  await signIn(page, PEOPLE.jimena)
  await page.waitForURL('**/learn')
  for (const back of ['//elsewhere.example', '/\\elsewhere.example', 'javascript:alert(1)']) {
    await page.goto(`/sign-in?back=${encodeURIComponent(back)}`)
    await expect(page).toHaveURL(/\/learn$/)
  }
})

test('everyone starts in their own room', async ({ browser }) => {
  for (const [who, room] of [[PEOPLE.jimena, '/learn'], [PEOPLE.selfShielded, '/teach'], [PEOPLE.coordinator, '/program']] as const) {
    const page = await as(browser, who, { viewport: DESK })
    await page.goto('/')
    expect(new URL(page.url()).pathname).toBe(room)
    await page.context().close()
  }
})

test('a newcomer joins with the class code of today, told at each box what is wrong before', async ({ browser }) => {
  const old = await classCode(browser)
  const teacher = await as(browser, PEOPLE.selfShielded, { viewport: TABLET })
  await teacher.goto(await classAddress(browser))
  await teacher.getByRole('button', { name: 'Make a new code' }).click()
  await teacher.getByRole('button', { name: 'End the old code and make a new one' }).click()
  await expect.poll(() => readCode(teacher)).not.toBe(old)
  const code = await readCode(teacher)

  const page = await stranger(browser, { viewport: PHONE })
  await page.goto(`/join?code=${old}`)
  await expectGoodScreen(page, { gloves: true })
  await expect(page.getByLabel('Class code')).toHaveValue(old)
  const person = inventPerson()
  const join = page.getByRole('button', { name: 'Join the class' })
  const told = (label: string, sentence: RegExp) => expect(page.getByLabel(label, { exact: true })).toHaveAccessibleDescription(sentence)

  // Not yet well formed: every box says so at once.
  await fillJoinForm(page, 'ABC', { ...person, password: 'short', signInName: 'a!', family: '' })
  await join.click()
  await told('Class code', /A class code has eight letters and digits/)
  await told('Password', /Use at least 15 characters/)
  await told('Sign-in name', /Use 3 to 40 letters, digits, dots or hyphens/)
  await told('Family name', /Fill this in/)
  await expect(page.getByLabel('Given name')).toHaveValue(person.given)
  await expectGoodScreen(page, { gloves: true })

  await fillJoinForm(page, old, { ...person, password: `${person.family}${person.family}` })
  await join.click()
  await told('Password', /Leave your name, the school and the program out of it/)

  // Well formed, and still not right.
  await fillJoinForm(page, old, person)
  await join.click()
  await told('Class code', /This code opens no class now/)
  await fillJoinForm(page, code, { ...person, signInName: PEOPLE.jimena.signInName })
  await join.click()
  await told('Sign-in name', /This sign-in name is taken/)
  await expect(page.getByLabel('Password', { exact: true })).toHaveValue(person.password)

  await fillJoinForm(page, code.toLowerCase().replace('-', ' '), person)
  await join.click()
  await page.waitForURL('**/learn')
  await expect(page.getByText(person.name)).toBeVisible()
  await expect(page.getByText('Next up')).toBeVisible()

  // The class sees them, and they can come back by their own name and password.
  await teacher.reload()
  await expect(teacher.getByRole('rowheader').getByRole('link', { name: person.name })).toBeVisible()
  await signOut(page)
  await page.waitForURL('**/sign-in')
  await signIn(page, person)
  await page.waitForURL('**/learn')
})

test('one device signs all the others out', async ({ browser }) => {
  const { page: lost, person } = await newcomer(browser)
  const here = await stranger(browser)
  await here.goto('/account')
  await signIn(here, person)
  await here.waitForURL('**/account')
  await here.getByRole('button', { name: 'Sign out everywhere but here' }).click()
  await expect(here.getByText('You are signed out everywhere but here.')).toBeVisible()
  await expectGoodScreen(here, { gloves: true })
  await lost.goto('/learn')
  await expect(lost).toHaveURL(/\/sign-in/)
  await here.goto('/learn')
  await expect(here).toHaveURL(/\/learn$/)
})

test('someone whose browser asks for Spanish joins in Spanish', async ({ browser }) => {
  const page = await stranger(browser, { locale: 'es-MX' })
  await page.goto('/sign-in')
  await expect(page.getByRole('heading', { name: 'Entrar' })).toBeVisible()
  await page.getByRole('link', { name: /Entra con el código de la clase/ }).click()
  await expect(page.getByRole('heading', { name: 'Unirse a una clase' })).toBeVisible()
  await page.getByLabel('Código de la clase').fill('ZZZZ-ZZZZ')
  await page.getByRole('button', { name: 'Unirme a la clase' }).click()
  await expect(page.getByLabel('Nombre', { exact: true })).toHaveAccessibleDescription(/Llena este espacio/)
  await expect(page.getByText('Algo de esto necesita otra mirada.')).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
})

test('setting up is over once there is a program', async ({ browser }) => {
  const page = await stranger(browser)
  const answer = await page.goto('/set-up')
  expect(answer?.status()).toBe(404)
})
