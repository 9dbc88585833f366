import { expect, it } from 'vitest'
import { browserName } from '@/lib/reports/browser-name'

it.each([
  ['Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0', 'Firefox, Windows'],
  ['Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36', 'Chrome, Android'],
  ['Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0', 'Edge, Windows'],
  ['something else', null],
  [null, null],
])('%s is called %s', (device, name) => {
  expect(browserName(device)).toBe(name)
})
