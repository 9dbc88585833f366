/** @type {import('next').NextConfig} */
const config = {
  poweredByHeader: false,
  reactStrictMode: true,
  images: { unoptimized: true }, // photos are private and sized on arrival; the optimizer is attack surface we do not need
  serverExternalPackages: ['@node-rs/argon2', 'pino', 'pg', 'sharp', '@prisma/client', '@prisma/adapter-pg'],
  htmlLimitedBots: /.*/, // a page never comes before its title: screen readers say it first, and paper has no scripts to add it later
  typescript: { ignoreBuildErrors: true }, // npm test runs tsc on the whole tree; building it twice buys nothing
  headers: async () => [
    {
      source: '/:path*',
      headers: [
        { key: 'X-Content-Type-Options', value: 'nosniff' },
        { key: 'X-Frame-Options', value: 'DENY' },
        { key: 'Referrer-Policy', value: 'same-origin' },
        { key: 'Permissions-Policy', value: 'camera=(self), microphone=(), geolocation=(), payment=()' },
        { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
        { key: 'Strict-Transport-Security', value: 'max-age=63072000; includeSubDomains' },
      ],
    },
  ],
}
export default config
