// One's own PIN for a shared tablet: set on a device of one's own, with the password.
import { expect, expectGoodScreen, newcomer, test } from './app'

test('a PIN is set with one’s own password, in either language, and no password is left in its box', async ({ browser }) => {
  const { page, person } = await newcomer(browser)
  await page.goto('/account')
  await page.waitForLoadState('networkidle') // its scripts have taken over
  const form = page.locator('form').filter({ has: page.locator('input[name="pin"]') })
  const [password, pin] = [form.locator('input[name="current"]'), form.locator('input[name="pin"]')]
  await expect(form.getByText('So that nobody else sets a PIN on your phone.')).toBeVisible()
  await pin.fill('4826')
  await form.getByRole('button', { name: 'Save the PIN' }).tap()
  await expect(form.getByText('This is not your current password.')).toBeVisible()
  await expectGoodScreen(page, { gloves: true })
  await password.fill(person.password)
  await form.getByRole('button', { name: 'Save the PIN' }).tap()
  await expect(form.getByText('Your new PIN works from now on.')).toBeVisible()
  await expect(password).toHaveValue('')
  await expect(pin).toHaveValue('')

  await page.locator('input[name="locale"][value="es"]').check()
  await page.getByRole('button', { name: 'Save', exact: true }).tap()
  await form.getByLabel('Contraseña actual').fill('no es esta')
  await form.getByLabel('PIN nuevo').fill('5937')
  await form.getByRole('button', { name: 'Guardar el PIN' }).tap()
  await expect(form.getByText('Esta no es tu contraseña actual.')).toBeVisible()
  await form.getByLabel('Contraseña actual').fill(person.password)
  await form.getByLabel('PIN nuevo').fill('1234')
  await form.getByRole('button', { name: 'Guardar el PIN' }).tap()
  await expect(form.getByText('Este es de los primeros que se adivinan.')).toBeVisible()
})
