import net from 'node:net'

/** A port of 127.0.0.1 that nobody listens on now. @returns {Promise<number>} */
export function freePort() {
  return new Promise((resolve, reject) => {
    const server = net.createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => (address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port'))))
    })
  })
}

/** @param {number} port @param {string} [host] */
export function isFree(port, host = '127.0.0.1') {
  return new Promise((resolve) => {
    const server = net.createServer().once('error', () => resolve(false))
    server.listen(port, host, () => server.close(() => resolve(true)))
  })
}
