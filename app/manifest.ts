import type { MetadataRoute } from 'next'

/** What a device needs to put the application on its home screen. It starts in the student's room; others are led to theirs. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/', name: 'Toeline', short_name: 'Toeline', description: 'Practice log, gauge and readiness record for welding classes.',
    start_url: '/', scope: '/', display: 'standalone', background_color: '#f4f3ef', theme_color: '#15171a',
    icons: [
      { src: '/icons/192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icons/512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icons/maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  }
}
